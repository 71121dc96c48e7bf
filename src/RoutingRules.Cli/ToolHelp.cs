using System.CommandLine;
using System.CommandLine.Invocation;

namespace RoutingRules.Cli;

/// <summary>Writes the help pages.</summary>
internal sealed class ToolHelp : SynchronousCommandLineAction
{
    private const string ToolName = "routing-rules";

    private const string ExitCodes = """
        Exit codes
          0  clean
          1  findings at or above the threshold, something left unplaced, or fixed places that contradict each other
          2  wrong usage, or something that cannot be read or written
          3  something could not be decided, the run was interrupted, or the tool itself failed
          When several apply, 2 wins over 1, 1 over 3, and 3 over 0.

        """;

    private const string Caution = """
        Before you change a patch: mute or turn down the amplifiers, do in-ear mixes first and with their limiters on, and bring up one output at a
        time at low level. A clean report is a statement about the document, not about the room.

        """;

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        Write(parseResult.CommandResult.Command, parseResult.InvocationConfiguration.Output);
        return ExitCode.Clean;
    }

    /// <summary>Writes the page of a command.</summary>
    public static void Write(Command command, TextWriter output)
    {
        output.Write($"{command.Description}\n\nUsage\n  {Usage(command)}\n");
        Section(output, "Commands", command.Subcommands.Select(sub => (sub.Name, Gist(sub.Description))));
        Section(output, "Arguments", command.Arguments.Select(argument => (argument.HelpName ?? argument.Name, argument.Description ?? "")));
        Section(output, "Options", command.Options.Where(option => option is not VersionOption || command is RootCommand).Select(Describe));
        if (command is ToolCommand tool)
        {
            output.Write("\nExamples\n");
            foreach (var example in tool.Examples)
            {
                output.Write($"  {example.Replace("\n", "\n      ", StringComparison.Ordinal)}\n");
            }

            return;
        }

        output.Write($"\n'{ToolName} COMMAND --help' shows a command with examples.\n\n{ExitCodes}\n{Caution}");
    }

    private static string Usage(Command command)
    {
        if (command is RootCommand)
        {
            return $"{ToolName} COMMAND …";
        }

        var usage = $"{ToolName} {command.Name}";
        foreach (var argument in command.Arguments)
        {
            var name = argument.HelpName ?? argument.Name;
            usage +=
                argument.Arity.MaximumNumberOfValues > 1 ? $" {name}…"
                : argument.Arity.MinimumNumberOfValues == 0 ? $" [{name}]"
                : $" {name}";
        }

        return usage + " [options]";
    }

    private static (string Name, string Text) Describe(Option option)
    {
        var value = option.ValueType == typeof(bool) || option.HelpName is null ? "" : $" {option.HelpName}";
        return (
            $"{string.Join(", ", option.Aliases.Where(alias => alias.StartsWith('-') && alias != "-?").Prepend(option.Name))}{value}",
            option.Description ?? ""
        );
    }

    /// <summary>The part before the first full stop or colon.</summary>
    private static string Gist(string? text) => (text ?? "").Split([". ", ": "], StringSplitOptions.None)[0].TrimEnd('.') + ".";

    private static void Section(TextWriter output, string title, IEnumerable<(string Name, string Text)> rows)
    {
        var list = rows.ToList();
        if (list.Count == 0)
        {
            return;
        }

        output.Write($"\n{title}\n");
        var width = list.Max(row => row.Name.Length) + 2;
        foreach (var (name, text) in list)
        {
            output.Write($"  {name.PadRight(width)}{text.Replace("\n", "\n" + new string(' ', width + 2), StringComparison.Ordinal)}\n");
        }
    }
}
