using System.CommandLine;
using RoutingRules.Cli.Output;
using RoutingRules.Reports.Answers;

namespace RoutingRules.Cli.Commands;

/// <summary>Options of commands whose answer is written as pages, as JSON, or otherwise.</summary>
internal static class PageOptions
{
    /// <summary>The format.</summary>
    /// <param name="formats">Names and what they are, the usual one first.</param>
    public static Option<string> Format(params (string Name, string Title)[] formats)
    {
        var option = new Option<string>("--format")
        {
            HelpName = "FORMAT",
            Description =
                $"How the answer is written, usually {formats[0].Name}.\n{string.Join(",\n", formats.Select(format => $"{format.Name}: {format.Title}"))}.",
            DefaultValueFactory = _ => formats[0].Name,
        };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count > 0 && !formats.Any(format => format.Name == result.Tokens[0].Value))
            {
                result.AddError($"'{result.Tokens[0].Value}' is no format of an answer; there are {NameList.Of(formats.Select(format => format.Name))}.");
            }
        });
        return option;
    }

    public static Option<string?> Out() => new("--out") { HelpName = "FILE", Description = "Write to a file; without it the answer goes to standard output." };

    public static PageFormat Pages(string format) =>
        format switch
        {
            "markdown" => PageFormat.Markdown,
            "html" => PageFormat.Html,
            _ => PageFormat.Text,
        };

    /// <summary>Writes the answer to the file, or to standard output.</summary>
    public static void Write(Action<Stream> write, OutputFile? target, CliConsole console)
    {
        write(target?.Content ?? console.Output);
        target?.Commit();
    }
}
