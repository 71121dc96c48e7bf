using System.CommandLine;
using System.Text.Json;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>fix</c>: mends what the rules find, as far as that can be done without a person.</summary>
internal static class FixCommand
{
    private static readonly string[] Formats = ["text", "json", "patch"];

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var dryRun = new Option<bool>("--dry-run") { Description = "Change nothing; say what would be changed." };
        var safe = new Option<bool>("--safe") { Description = "Take safe fixes only: outputs and channels go on carrying what they carry. This is the usual." };
        var @unsafe = new Option<bool>("--unsafe")
        {
            Description = "Also take fixes that may change where signal goes; read what they did before anybody plays through it.",
        };
        var rule = new Option<string[]>("--rule")
        {
            HelpName = "ID",
            Description = "Mend only what this rule finds, named by id or name, accepted findings as well; may be given several times.",
            DefaultValueFactory = _ => [],
        };
        var cause = ToolOptions.Number(
            "--cause",
            1,
            999,
            "Mend the cause of this number in what check says, also where signal moves; of a tie the first repair."
        );
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write the mended show to a file; without it the show goes to standard output.",
        };
        var inPlace = new Option<bool>("--in-place") { Description = "Write the mended show over the file itself." };
        var format = new Option<string?>("--format")
        {
            HelpName = string.Join('|', Formats),
            Description =
                "How the account on standard output is written, together with --dry-run, --out or --in-place: "
                + "text (usual), json (after fix.schema.json), or patch, a JSON Patch of the show.",
            CustomParser = result =>
            {
                var word = result.Tokens[0].Value;
                if (!Formats.Contains(word, StringComparer.Ordinal))
                {
                    result.AddError($"--format takes text, json or patch, not '{word}'.");
                }

                return word;
            },
        };
        var waivers = ToolOptions.Waivers();
        var asOf = ToolOptions.AsOf();
        var baseline = new Option<string?>("--baseline") { HelpName = "FILE", Description = "Leave alone what a baseline knows." };
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "fix",
            "Mend what the rules find: each fix is tried on a copy, and taken only when its finding is gone and nothing worse has come.",
            "routing-rules fix saturday.show.json --dry-run\nSays what would be changed, and changes nothing.",
            "routing-rules fix saturday.show.json --out mended.show.json\nTakes the safe fixes; the rest of the text stays as it is written.",
            "routing-rules fix saturday.show.json --cause 1 --out mended.show.json\nMakes the repair of the first cause that check names.",
            "routing-rules fix saturday.show.json --waivers waivers.json --baseline baseline.json --dry-run\n"
                + "Leaves alone what somebody has decided to live with."
        )
        {
            file,
            dryRun,
            safe,
            @unsafe,
            rule,
            cause,
            @out,
            inPlace,
            format,
            waivers,
            asOf,
            baseline,
            setup,
        };
        command.SetAction(parsed =>
        {
            var job = new Job(
                parsed.GetRequiredValue(file),
                parsed.GetValue(dryRun),
                parsed.GetValue(@unsafe),
                parsed.GetValue(@out),
                parsed.GetValue(inPlace),
                parsed.GetValue(format),
                (int?)parsed.GetValue(cause)
            );
            Refuse(job, parsed.GetValue(safe), parsed.GetRequiredValue(rule).Length > 0);
            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            var choice = new AcceptanceChoice(
                parsed.GetValue(waivers),
                parsed.GetValue(asOf) ?? console.Today(),
                parsed.GetValue(baseline),
                IsUpdate: false,
                IsForce: false
            );
            using var acceptance = new Acceptance(choice, [job.Path], engine, console, cancellation);
            var options = new FixOptions
            {
                IncludeUnsafe = job.IsUnsafe,
                Rules = Rules(parsed.GetRequiredValue(rule), engine),
                IsAccepted = finding => acceptance.Accepts(job.Path, finding),
            };
            return Run(job, engine, options, acceptance, [.. loaded.Files, .. choice.Files], console, cancellation);
        });
        return command;
    }

    private sealed record Job(string Path, bool IsDry, bool IsUnsafe, string? OutPath, bool IsInPlace, string? Format, int? Cause)
    {
        public bool ShowsText => !IsDry && OutPath is null && !IsInPlace;

        public bool ListsFixes => !ShowsText && Format != "patch";
    }

    private static void Refuse(Job job, bool isSafe, bool namesRule)
    {
        var problem =
            isSafe && job.IsUnsafe ? "--safe and --unsafe cannot be had together; take one of them."
            : job.Cause is not null && (isSafe || job.IsUnsafe || namesRule) ? "--cause names one repair; leave --safe, --unsafe and --rule away."
            : job.OutPath is not null && job.IsInPlace ? "--out and --in-place cannot be had together; take one of them."
            : job.IsDry && (job.OutPath is not null || job.IsInPlace) ? "--dry-run writes no show; leave --out and --in-place away."
            : job.IsInPlace && job.Path == InputDocument.StandardInput ? "standard input cannot be written in place; use --out FILE."
            : job.ShowsText && job.Format is not null
                ? "--format is for the account, and without --out or --in-place standard output carries the show; add one of them, or --dry-run."
            : null;
        if (problem is not null)
        {
            throw new UsageException(problem);
        }
    }

    private static ValueList<string> Rules(string[] named, RoutingEngine engine)
    {
        foreach (var name in named)
        {
            if (!engine.Rules.Any(rule => rule.Descriptor.Id == name || rule.Descriptor.Name == name))
            {
                throw new UsageException($"there is no rule '{name}'; see 'routing-rules rules'.");
            }
        }

        return named.ToValueList();
    }

    private static int Run(
        Job job,
        RoutingEngine engine,
        FixOptions options,
        Acceptance acceptance,
        IReadOnlyList<string> otherInputs,
        CliConsole console,
        CancellationToken cancellation
    )
    {
        var outPath = job.IsInPlace ? job.Path : job.OutPath;
        if (ShowToEdit.Read(job.Path, "mended", engine, console, cancellation) is not { } input)
        {
            return ExitCode.Usage;
        }

        using var target = outPath is null ? null : OutputFile.Begin(outPath, job.IsInPlace ? otherInputs : [job.Path, .. otherInputs]);
        var own = OwnWaivers.Book(input.Show, engine.Catalogue, acceptance.AsOf);
        var accepts = options.IsAccepted;
        options = options with { IsAccepted = finding => own?.Excuses(finding, "") == true || accepts?.Invoke(finding) == true };
        var result = Mend(job, engine, input.Show, options, cancellation);
        var edited = result.Applied.IsEmpty
            ? new EditedText
            {
                Utf8 = input.Utf8,
                Patch = new JsonPatch(default),
                IsRewritten = false,
            }
            : ShowText.Edit(input.Utf8.Span, result.Edits, result.Show);
        var check = DocumentCheck.Of(input.Name, result.Show, result.After, edited.Utf8.Span).WithOwnWaivers(engine, acceptance.AsOf, edited.Utf8);
        var after = acceptance.Apply(job.Path, job.ListsFixes ? check.WithFixes(engine, edited.Utf8, cancellation) : check);
        if (job.ShowsText)
        {
            console.Output.Write(edited.Utf8.Span);
            CliRunner.Say(console, $"{FixReport.Heading(result, after, false)}; use --dry-run to see each of them.");
        }
        else
        {
            target?.Content.Write(edited.Utf8.Span);
            Tell(job, result, after, PatchOf(edited, input.Show, result.Edits), console);
            target?.Commit();
        }

        if (edited.IsRewritten)
        {
            CliRunner.Say(console, "the whole document is written anew, because the fixes could not be written into its text; its layout is not kept.");
        }

        return CheckCommand.CodeOf(after, engine.Config.FailOn);
    }

    private static FixResult Mend(Job job, RoutingEngine engine, Show show, FixOptions options, CancellationToken cancellation)
    {
        if (job.Cause is not { } number)
        {
            return engine.Fix(show, options, cancellation);
        }

        try
        {
            return engine.FixCause(show, number, cancellation);
        }
        catch (ArgumentException fault) when (fault.GetType() == typeof(ArgumentException))
        {
            throw new UsageException($"--cause: {fault.Message}");
        }
    }

    /// <summary>The change as a patch, or why there is none: a document can hold what no patch carries, where only other tools read it.</summary>
    private static (JsonPatch? Patch, string Problem) PatchOf(EditedText edited, Show show, ValueList<ShowEdit> edits)
    {
        try
        {
            return (edited.Patch ?? EditPatch.Of(show, edits), "");
        }
        catch (JsonException fault)
        {
            return (null, $"the change cannot be written as a patch: {fault.Message} Only what stands under 'extensions' can be like that.");
        }
    }

    private static void Tell(Job job, FixResult result, DocumentCheck after, (JsonPatch? Patch, string Problem) change, CliConsole console)
    {
        if (job.Format is "patch" or "json" && change.Patch is null)
        {
            throw new UsageException(change.Problem);
        }

        if (job.Format == "patch")
        {
            console.Output.Write(change.Patch!.ToUtf8());
        }
        else if (job.Format == "json")
        {
            FixReport.WriteJson(console.Output, result, after, change.Patch!);
        }
        else
        {
            console.Output.Write(Texts.Utf8.GetBytes(FixReport.Text(result, after, job.IsDry)));
            if (job.IsDry && !result.Applied.IsEmpty)
            {
                console.Output.Write(change.Patch is null ? Texts.Utf8.GetBytes($"\n{PlainText.Show(change.Problem)}\n") : "\nas JSON Patch (RFC 6902)\n"u8);
                console.Output.Write(Texts.Utf8.GetBytes(change.Patch is { } patch ? SafeText.Show(Texts.Utf8.GetString(patch.ToUtf8())) : ""));
            }
        }
    }
}
