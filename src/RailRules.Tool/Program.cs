using System.Text;
using RailRules.Tool;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await Commands.RunAsync(args, Console.Out, Console.Error);
