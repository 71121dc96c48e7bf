using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Planning;
using RoutingRules.Planning.LineChecks;
using RoutingRules.Reports.Answers;
using RoutingRules.Reports.Lists;
using RoutingRules.Reports.Names;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary><c>mark</c>: writes into a show what a line check found.</summary>
internal static class MarkCommand
{
    private static readonly (LineCheckWord Word, string Description)[] Words =
    [
        (LineCheckWord.Dead, "This connector does not work: POINT, or the first and the last of some in a row."),
        (LineCheckWord.Works, "This one works again."),
        (LineCheckWord.Reserved, "This one is kept for somebody else."),
        (LineCheckWord.Swapped, "The plugs at two connectors are the other way round: ONE=OTHER."),
        (LineCheckWord.Moved, "What belongs at one connector was found plugged at another, which was free: ONE=OTHER."),
    ];

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var words = Array.ConvertAll(Words, word => Of(word.Word, word.Description));
        var results = new Option<string?>("--results")
        {
            HelpName = "CSV",
            Description =
                "What was found, as a list in CSV: a connector a row, with columns point, result (works, dead, reserved, swapped or moved), found at and "
                + "remark. "
                + "Other columns are not read, so the list that 'sheet --list walk' gives can be filled in; rows without a result were not checked.",
        };
        var reason = new Option<string?>("--reason") { HelpName = "TEXT", Description = "What is wrong with the dead, or for whom the reserved are." };
        var free = new Option<bool>("--free") { Description = "Let feeds and lines that name a dead connector take another of the same device." };
        var (edit, names, setup) = (new EditOptions("marked"), new NamesOption(NameStyle.Panel), new EngineOptions());
        var command = new ToolCommand(
            "mark",
            "Write into a show what the line check found: connectors that do not work, and plugs that are elsewhere. Cables, places, settings and labels of "
                + "inputs go with the plugs; the routes follow when the show is assigned again, and what needs that is listed.",
            "routing-rules mark saturday.show.json --dead box-r/out/5 --reason \"no signal\" --free --out checked.show.json\n"
                + "Marks an output, and lets go what named it.",
            "routing-rules mark saturday.show.json --swapped \"SR box 3=SR box 4\" --in-place\n"
                + "Two microphones are the other way round; then assign lets the channels follow.",
            "routing-rules mark saturday.show.json --results checked.csv --dry-run\nSays what a filled-in list would change."
        )
        {
            file,
            results,
            reason,
            free,
            edit,
            names,
            setup,
        };
        foreach (var word in words.Reverse())
        {
            command.Options.Insert(0, word);
        }

        command.SetAction(parsed =>
        {
            var job = edit.Read(parsed, parsed.GetRequiredValue(file));
            var list = parsed.GetValue(results);
            ListInput.RefuseBoth(job.Path, list);
            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            if (ShowToEdit.Read(job.Path, job.Done, engine, console, cancellation) is not { } input)
            {
                return ExitCode.Usage;
            }

            var show = engine.Resolve(input.Show);
            var given = new List<(LineCheckResult Result, string Said)>();
            for (var i = 0; i < words.Length; i++)
            {
                given.AddRange(
                    parsed
                        .GetRequiredValue(words[i])
                        .Select(text => (Result(words[i].Name, Words[i].Word, text, show, parsed.GetValue(reason), console), $"{words[i].Name} {text}"))
                );
            }

            var unchecked_ = list is null ? 0 : Read(list, show, given, console, cancellation);
            if (given.Count == 0)
            {
                throw new UsageException("nothing was found; say what, with --dead, --works, --reserved, --swapped, --moved or --results.");
            }

            var record = engine.RecordLineCheck(input.Show, given.ConvertAll(entry => entry.Result), parsed.GetValue(free));
            if (!record.Problems.IsEmpty)
            {
                var lines = record.Problems.Select(problem => $"{given[problem.Index].Said}: {problem.Text}");
                throw new UsageException($"nothing was marked.\n{string.Join('\n', lines)}");
            }

            job.Run(
                input,
                list is null ? [.. loaded.Files] : [list, .. loaded.Files],
                () =>
                    new(
                        record.Show,
                        record.Edits,
                        LineCheckReport.Heading(record, false),
                        LineCheckReport.Text(input.Name, record, job.IsDry, names.Of(parsed, show))
                            + (unchecked_ == 0 ? "" : FormattableString.Invariant($"  {unchecked_} of the list without a result.\n"))
                    ),
                console
            );
            return record.ToAssign.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
        });
        return command;
    }

    private static Option<string[]> Of(LineCheckWord word, string description) =>
        new($"--{word.ToString().ToLowerInvariant()}")
        {
            HelpName = word is LineCheckWord.Swapped or LineCheckWord.Moved ? "ONE=OTHER" : "POINT",
            Description = $"{description} May be given several times.",
            DefaultValueFactory = _ => [],
        };

    private static LineCheckResult Result(string option, LineCheckWord word, string text, ResolvedShow show, string? reason, CliConsole console)
    {
        var called = new CalledByName(show);
        var parts = text.Split('=');
        var isPair = word is LineCheckWord.Swapped or LineCheckWord.Moved;
        if (parts.Length != (isPair ? 2 : 1))
        {
            throw new UsageException($"{option}: '{text}' must name {(isPair ? "two connectors, as ONE=OTHER" : "connectors, without '='")}.");
        }

        return new LineCheckResult
        {
            At = called.Points(parts[0].Trim(), option),
            Word = word,
            Other = isPair ? called.Points(parts[1].Trim(), option) : null,
            Reason = isPair ? null : reason,
            Since = word == LineCheckWord.Dead ? console.Today() : null,
        };
    }

    private static int Read(
        string path,
        ResolvedShow show,
        List<(LineCheckResult Result, string Said)> given,
        CliConsole console,
        CancellationToken cancellation
    )
    {
        var name = InputDocument.NameOf(path);
        var read = LineCheckList.Read(show, ListInput.Load(path, console, cancellation).Span, console.Today());
        if (!read.Problems.IsEmpty)
        {
            throw new UsageException($"the list was not read, and nothing was marked.\n{string.Join('\n', read.Problems.Select(line => $"{name}: {line}"))}");
        }

        given.AddRange(read.Results.Zip(read.Lines, (result, line) => (result, FormattableString.Invariant($"{name}: line {line}"))));
        return read.Unchecked;
    }
}
