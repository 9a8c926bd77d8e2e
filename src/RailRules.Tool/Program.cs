using System.Text;
using RailRules.Tool;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
<<<<<<< HEAD
return await Commands.RunAsync(args, Console.Out, Console.Error);
=======
var root = Commands.Root();
var parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    foreach (var error in parsed.Errors)
    {
        Console.Error.WriteLine(error.Message);
    }

    Console.Error.WriteLine("See 'railrules --help', 'railrules review --help' and 'railrules choose --help'.");
    return ExitCode.CannotRun;
}

return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = TimeSpan.FromSeconds(10) });
>>>>>>> 744c6fe (Choose parts from the command line)
