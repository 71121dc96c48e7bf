using System.CommandLine;
using System.Text.Json;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Comparing;
using RoutingRules.Reports.Answers;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Commands;

/// <summary><c>compare</c>: says what differs between two shows.</summary>
internal static class CompareCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var before = new Argument<string>("FIRST") { Description = "The show to start from, or - for standard input." }.NamesNoOption();
        var after = new Argument<string>("SECOND") { Description = "The show to arrive at, or - for standard input." }.NamesNoOption();
        var format = PageOptions.Format(
            ("text", "for people at a terminal"),
            ("json", "for programs, after comparison.schema.json"),
            ("markdown", "for people in a text that shows tables"),
            ("html", "for a browser"),
            ("patch", "a JSON Patch (RFC 6902) that turns the first document into the second")
        );
        var @out = PageOptions.Out();
        var names = new NamesOption(NameStyle.Both);
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "compare",
            "Say what differs between two shows: what outputs and channels carry, where feeds and lines are, what the rules find, and what the "
                + "documents say. Fails when the second show has new findings, or the change itself is dangerous.",
            "routing-rules compare friday.show.json saturday.show.json\nWhat is heard elsewhere, and what is plugged elsewhere?",
            "routing-rules compare friday.show.json saturday.show.json --format patch --out friday-to-saturday.json\nThe difference as a JSON Patch."
        )
        {
            before,
            after,
            format,
            @out,
            names,
            setup,
        };
        command.SetAction(parsed =>
        {
            var paths = new[] { parsed.GetRequiredValue(before), parsed.GetRequiredValue(after) };
            if (paths[0] == InputDocument.StandardInput && paths[1] == InputDocument.StandardInput)
            {
                throw new UsageException("both shows cannot come from standard input; name a file for one of them.");
            }

            var (engine, loaded) = setup.Create(parsed, paths, console, cancellation);
            using var target = parsed.GetValue(@out) is { } outPath ? OutputFile.Begin(outPath, [.. paths, .. loaded.Files]) : null;
            var documents = paths.Select(path => InputDocument.Load(path, console, cancellation)).ToArray();
            var shows = new Show?[2];
            for (var i = 0; i < shows.Length; i++)
            {
                shows[i] = ShowInput.Of(paths[i], documents[i], console, engine);
            }

            if (shows[0] is not { } first || shows[1] is not { } second)
            {
                return ExitCode.Usage;
            }

            var comparison = engine.Compare(first, second, cancellation);
            PageOptions.Write(
                output =>
                    Write(
                        parsed.GetValue(format)!,
                        comparison,
                        paths,
                        documents,
                        () => names.Of(parsed, engine.Resolve(first), engine.Resolve(second)),
                        output
                    ),
                target,
                console
            );
            return CodeOf(comparison, engine.Config.FailOn);
        });
        return command;
    }

    /// <summary>Fails for what the change brings, not for what both shows have.</summary>
    public static int CodeOf(ShowComparison comparison, Severity failOn) =>
        comparison.Hazards.Concat(comparison.NewFindings).Any(finding => finding.Severity >= failOn) ? ExitCode.Findings
        : comparison.Undecided.IsEmpty ? ExitCode.Clean
        : ExitCode.Undecided;

    private static void Write(string format, ShowComparison comparison, string[] paths, DocumentFile[] documents, Func<PanelNames> names, Stream output)
    {
        switch (format)
        {
            case "json":
                ComparisonJson.Write(comparison, output);
                break;
            case "patch":
                output.Write(PatchBetween(documents).ToUtf8());
                break;
            default:
                output.Write(
                    Texts.Utf8.GetBytes(
                        ComparisonReport.Write(comparison, InputDocument.NameOf(paths[0]), InputDocument.NameOf(paths[1]), PageOptions.Pages(format), names())
                    )
                );
                break;
        }
    }

    private static JsonPatch PatchBetween(DocumentFile[] documents)
    {
        try
        {
            return JsonPatch.Between(documents[0].Utf8.Span, documents[1].Utf8.Span);
        }
        catch (JsonException fault)
        {
            throw new UsageException($"what differs cannot be written as a patch: {fault.Message} Mend that under 'extensions', or ask for another --format.");
        }
    }
}
