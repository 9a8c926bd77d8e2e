using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Globalization;

namespace RailRules.Tool;

/// <summary>The command line.</summary>
internal static class Commands
{
    private const string Examples = """

        Examples:
          railrules review                                    the project or solution of this folder; review/BOARD.html
          railrules review Shelf.sln --format html,json -o out
          railrules review Shelf.csproj --strict --quiet      for a build: only the exit code and what fails
          railrules review --strict --today $(date +%F)       a waiver past its date waives nothing
          railrules review Shelf.csproj --baseline margins/Shelf.json --max-loss 0.05
          railrules choose Shelf.csproj --at F11              which parts of the tables pass there, best first
          railrules choose Shelf.csproj --at Shelf.Sled.Path[0] --apply
          railrules choose Shelf.csproj --second-source Reed25

        Exit codes:
          0  every check holds (or is waived, or undecided without --strict); a part passes
          1  a check fails, or a board cannot be evaluated; no part passes
          2  with --strict: nothing fails, but something is undecided
          3  the review cannot be made, the place is not known or the file not changed; the message says what, why and what to do
          4  with --max-loss: nothing fails, but a margin lost more than that since the baseline

        Cautions: a review is a design aid and approves nothing. The values entered decide; local codes, product safety standards
        and a licensed or competent engineer have the last word. Verify by test.
        """;

    /// <summary>Runs a command line; the exit code.</summary>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, TextWriter output, TextWriter error, CancellationToken cancellation = default)
    {
        var parsed = Root().Parse(arguments);
        if (parsed.Errors.Count > 0)
        {
            foreach (var one in parsed.Errors)
            {
                error.WriteLine(one.Message);
            }

            error.WriteLine("See 'railrules --help', 'railrules review --help' and 'railrules choose --help'.");
            return ExitCode.CannotRun;
        }

        return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = TimeSpan.FromSeconds(10), Output = output, Error = error }, cancellation);
    }

    private static RootCommand Root()
    {
        var root = new RootCommand("Reviews DC power rails described with RailRules: verdicts, margins and worksheets of every board, from the source text alone.") { Review(), Choose(), Completion() };
        AddExamples(root);
        return root;
    }

    private static Command Review()
    {
        var path = PathArgument();
        var output = new Option<string>("--output", "-o") { Description = "Folder for the files", DefaultValueFactory = _ => "review", HelpName = "DIR" };
        var format = new Option<string[]>("--format", "-f") { Description = $"Comma-separated list of {string.Join(", ", Formats.All.Keys)}", DefaultValueFactory = _ => ["html"], HelpName = "LIST", AllowMultipleArgumentsPerToken = true };
        format.CompletionSources.Add([.. Formats.All.Keys]);
        format.Validators.Add(result =>
        {
            foreach (var unknown in result.Tokens.SelectMany(token => Formats.Split(token.Value)).Where(name => !Formats.All.ContainsKey(name)))
            {
                result.AddError($"'{unknown}' is no format; there are {string.Join(", ", Formats.All.Keys)}.");
            }
        });
        var (configuration, framework, noRestore) = BuildArguments();
        var property = new Option<string[]>("--property", "-p") { Description = "Further build property; may be given several times", HelpName = "NAME=VALUE" };
        property.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(token => token.Value.IndexOf('=') < 1))
            {
                result.AddError($"'{token.Value}' is no property such as Name=Value.");
            }
        });
        var allowNone = new Option<bool>("--allow-no-board") { Description = "A project without boards is no error" };
        var root = new Option<string?>("--root") { Description = "Folder to which paths in the files are relative; else each project's folder", HelpName = "DIR" };
        var strict = new Option<bool>("--strict") { Description = "Undecided checks end in exit code 2" };
        var quiet = new Option<bool>("--quiet", "-q") { Description = "Print only what fails" };
        var baseline = new Option<string?>("--baseline") { Description = "JSON review (or folder of them) to compare with; writes BOARD.changes.md", HelpName = "FILE" };
        var loss = new Option<double?>("--max-loss")
        {
            Description = "Largest share of its margin that a check may lose since the baseline, e.g. 0.05",
            HelpName = "SHARE",
            CustomParser = result => double.TryParse(result.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var share) && share is >= 0 and < 1 ? share : Refuse<double>(result, "is no share from 0 to 1, such as 0.05"),
        };
        var today = new Option<DateTime?>("--today")
        {
            Description = "Day on which waivers are judged, as year-month-day; the build property RailRulesToday if not given",
            HelpName = "DATE",
            CustomParser = result => DateTime.TryParseExact(result.Tokens[0].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : Refuse<DateTime>(result, "is no date such as 2027-06-30"),
        };
        var command = new Command("review", "Evaluates every board and writes its review.") { path, output, format, configuration, framework, property, root, noRestore, allowNone, strict, quiet, baseline, loss, today };
        command.Validators.Add(result =>
        {
            if (result.GetValue(loss) is not null && result.GetValue(baseline) is null)
            {
                result.AddError("--max-loss compares with a baseline: give one with --baseline.");
            }
        });
        command.SetAction((parsed, cancellation) => new ReviewRun(
            new ReviewOptions(
                parsed.GetValue(path)!,
                parsed.GetValue(output)!,
                [.. parsed.GetValue(format)!.SelectMany(Formats.Split).Distinct()],
                new BuildOptions(parsed.GetValue(configuration), parsed.GetValue(framework), !parsed.GetValue(noRestore), parsed.GetValue(property)),
                parsed.GetValue(root),
                parsed.GetValue(strict),
                parsed.GetValue(quiet),
                parsed.GetValue(baseline),
                parsed.GetValue(loss),
                parsed.GetValue(today),
                parsed.GetValue(allowNone)),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error).RunAsync(cancellation));
        return command;
    }

    private static Command Choose()
    {
        var path = PathArgument();
        var at = new Option<string?>("--at") { Description = "The place: a designator, or BOARD.RAIL.Path[0]", HelpName = "PLACE" };
        var second = new Option<string?>("--second-source") { Description = "A part in use: which parts of its kind and rating hold everywhere that it stands", HelpName = "PART" };
        var apply = new Option<bool>("--apply") { Description = "Put the first part that passes into the source" };
        var part = new Option<string?>("--part") { Description = "With --apply: the part to put there; it must pass", HelpName = "PART" };
        var format = new Option<string>("--format", "-f") { Description = "text or json", DefaultValueFactory = _ => "text", HelpName = "FORMAT" };
        format.AcceptOnlyFromAmong("text", "json");
        var most = new Option<int>("--most") { Description = "How many parts that pass are printed", DefaultValueFactory = _ => 10, HelpName = "N" };
        var (configuration, framework, noRestore) = BuildArguments();
        var command = new Command("choose", "Tries every part of the parts tables in a place, with the rules that judge the board.") { path, at, second, apply, part, format, most, configuration, framework, noRestore };
        command.Validators.Add(result =>
        {
            if (result.GetValue(at) is null == result.GetValue(second) is null)
            {
                result.AddError("Give either --at PLACE or --second-source PART.");
            }

            if (result.GetValue(apply) && result.GetValue(at) is null)
            {
                result.AddError("--apply changes one place: give it with --at.");
            }

            if (result.GetValue(part) is not null && !result.GetValue(apply))
            {
                result.AddError("--part names the part that --apply puts there: give both.");
            }
        });
        command.SetAction((parsed, cancellation) => new ChooseRun(
            new ChooseOptions(
                parsed.GetValue(path)!,
                new BuildOptions(parsed.GetValue(configuration), parsed.GetValue(framework), !parsed.GetValue(noRestore)),
                parsed.GetValue(at),
                parsed.GetValue(second),
                parsed.GetValue(part),
                parsed.GetValue(apply),
                parsed.GetValue(format)!,
                parsed.GetValue(most)),
            parsed.InvocationConfiguration.Output,
            parsed.InvocationConfiguration.Error).RunAsync(cancellation));
        return command;
    }

    private static Argument<string> PathArgument() => new("PATH") { Description = "Project (.csproj), solution (.sln, .slnx) or folder of one", DefaultValueFactory = _ => "." };

    private static (Option<string?> Configuration, Option<string?> Framework, Option<bool> NoRestore) BuildArguments() => (
        new("--configuration", "-c") { Description = "Build configuration; the project's default if not given", HelpName = "NAME" },
        new("--framework") { Description = "Target framework, where the project has several; else its first", HelpName = "TFM" },
        new("--no-restore") { Description = "Do not restore packages first" });

    private static T? Refuse<T>(System.CommandLine.Parsing.ArgumentResult result, string why)
        where T : struct
    {
        result.AddError($"'{result.Tokens[0].Value}' {why}.");
        return null;
    }

    private static Command Completion()
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh or pwsh" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "pwsh");
        var command = new Command("completion", "Prints a script that completes this command in a shell.") { shell };
        command.SetAction(parsed => parsed.InvocationConfiguration.Output.WriteLine(parsed.GetValue(shell) switch
        {
            "bash" => "_railrules() { local IFS=$'\\n'; COMPREPLY=($(railrules \"[suggest:${COMP_POINT}]\" \"${COMP_LINE}\" 2>/dev/null)); }\ncomplete -o default -F _railrules railrules",
            "zsh" => "_railrules() { compadd -- ${(f)\"$(railrules \"[suggest:${CURSOR}]\" \"${BUFFER}\" 2>/dev/null)\"}; _files }\ncompdef _railrules railrules",
            _ => "Register-ArgumentCompleter -Native -CommandName railrules -ScriptBlock { param($word, $line, $position) railrules \"[suggest:$position]\" \"$line\" | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_) } }",
        }));
        return command;
    }

    private static void AddExamples(Command command)
    {
        foreach (var option in command.Options.OfType<HelpOption>())
        {
            option.Action = new HelpWithExamples((HelpAction)option.Action!);
        }
    }

    private sealed class HelpWithExamples(HelpAction plain) : SynchronousCommandLineAction
    {
        public override int Invoke(ParseResult parseResult)
        {
            var (configuration, output) = (parseResult.InvocationConfiguration, parseResult.InvocationConfiguration.Output);
            using var help = new StringWriter();
            configuration.Output = help;
            var code = plain.Invoke(parseResult);
            configuration.Output = output;

            // The library names the assembly; users type the command.
            output.WriteLine(help.ToString().Replace("  " + parseResult.RootCommandResult.Command.Name, "  railrules", StringComparison.Ordinal).TrimEnd());
            output.WriteLine(Examples);
            return code;
        }
    }
}
