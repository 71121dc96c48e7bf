using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Upgrading;

namespace RoutingRules.Cli.Commands;

/// <summary><c>upgrade</c>: writes documents in the present format version.</summary>
internal static class UpgradeCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "The documents, or - for one on standard input.",
            Arity = ArgumentArity.OneOrMore,
        }.NamesNoOption();
        var @out = new Option<string?>("--out")
        {
            HelpName = "FILE",
            Description = "Write the one document to a file; without it, it goes to standard output.",
        };
        var inPlace = new Option<bool>("--in-place") { Description = "Write each document over its file, if it is not in the present version already." };
        var dryRun = new Option<bool>("--dry-run") { Description = "Write no document; say what would be changed." };
        var kind = new Option<SchemaKind?>("--kind")
        {
            HelpName = "KIND",
            Description =
                "What the documents are: show, run, config, waivers or baseline. Without it their names tell: *.run.json, routing-rules.json,\n"
                + "*waivers.json, *baseline.json; everything else is a show.",
            CustomParser = result =>
            {
                var word = result.Tokens[0].Value;
                if (UpgradeKinds.Find(word) is { } found)
                {
                    return found;
                }

                result.AddError($"--kind takes show, run, config, waivers or baseline, not '{word}'.");
                return null;
            },
        };
        var format = ToolOptions.TextOrJson(
            "How the account on standard output is written, together with --out, --in-place or --dry-run: text (usual) or json."
        );
        var command = new ToolCommand(
            "upgrade",
            "Write documents of an older format version in the present one. Older documents are read as they are by every command; this keeps them "
                + "for other tools. "
                + "The rest of the text stays as it is written, and a document in the present version stays byte for byte.",
            "routing-rules upgrade archive/2024.show.json --out 2024.show.json\nWrites it in the present version and says what was changed.",
            "routing-rules upgrade archive/*.show.json --in-place\nWrites all over themselves, or none when one of them cannot be read in full."
        )
        {
            files,
            @out,
            inPlace,
            dryRun,
            kind,
            format,
        };
        command.SetAction(parsed =>
        {
            var job = new Job(
                parsed.GetRequiredValue(files),
                parsed.GetValue(@out),
                parsed.GetValue(inPlace),
                parsed.GetValue(dryRun),
                parsed.GetValue(kind),
                parsed.GetValue(format)
            );
            Refuse(job);
            return Run(job, console, cancellation);
        });
        return command;
    }

    private sealed record Job(string[] Paths, string? OutPath, bool IsInPlace, bool IsDry, SchemaKind? Kind, string? Format)
    {
        public bool ShowsText => OutPath is null && !IsInPlace && !IsDry;
    }

    private static void Refuse(Job job)
    {
        var problem =
            (job.OutPath is not null ? 1 : 0) + (job.IsInPlace ? 1 : 0) + (job.IsDry ? 1 : 0) > 1
                ? "--out, --in-place and --dry-run exclude one another; take one of them."
            : job.Paths.Length > 1 && !job.IsInPlace && !job.IsDry
                ? "several documents have no room in one file or on standard output; take --in-place or --dry-run, or name one."
            : job.Paths.Distinct(StringComparer.Ordinal).Count() < job.Paths.Length ? "a document is named twice; name each once."
            : job.IsInPlace && job.Paths.Contains(InputDocument.StandardInput) ? "standard input cannot be written in place; use --out FILE."
            : job.ShowsText && job.Format is not null
                ? "--format is for the account, and standard output carries the document; add --out FILE, --in-place or --dry-run."
            : null;
        if (problem is not null)
        {
            throw new UsageException(problem);
        }
    }

    private static int Run(Job job, CliConsole console, CancellationToken cancellation)
    {
        var done = new List<(string Path, UpgradeResult Result)>();
        foreach (var (path, kind) in job.Paths.Select(path => (path, job.Kind ?? UpgradeKinds.Of(path))).ToList())
        {
            var file = InputDocument.Load(path, console, cancellation);
            var result = file.Problem is { } problem
                ? new UpgradeResult
                {
                    Utf8 = default,
                    Findings = [problem],
                    IsUsable = false,
                }
                : DocumentUpgrade.Run(kind, file.Utf8);
            done.Add((path, result));
            cancellation.ThrowIfCancellationRequested();
        }

        foreach (var (path, result) in done.Where(document => !document.Result.IsUsable))
        {
            foreach (var finding in result.Findings)
            {
                CliRunner.Say(console, ConfigSetup.Line(InputDocument.NameOf(path), finding));
            }
        }

        if (done.Exists(document => !document.Result.IsUsable))
        {
            CliRunner.Say(console, "nothing was written; mend what is named first.");
            return ExitCode.Usage;
        }

        Write(job, done, console);
        return ExitCode.Clean;
    }

    private static void Write(Job job, List<(string Path, UpgradeResult Result)> done, CliConsole console)
    {
        if (job.ShowsText)
        {
            console.Output.Write(done[0].Result.Utf8.Span);
            CliRunner.Say(console, UpgradeAccount.Heading(InputDocument.NameOf(done[0].Path), done[0].Result));
            return;
        }

        // All are whole beside their places before the first takes its place.
        var targets = new List<OutputFile>();
        try
        {
            foreach (var (path, result) in done.Where(document => job.OutPath is not null || (job.IsInPlace && !document.Result.Steps.IsEmpty)))
            {
                var target = OutputFile.Begin(job.OutPath ?? path, job.OutPath is null ? [] : [path]);
                targets.Add(target);
                target.Content.Write(result.Utf8.Span);
            }

            targets.ForEach(target => target.Commit());
        }
        finally
        {
            targets.ForEach(target => target.Dispose());
        }

        UpgradeAccount.Write(console.Output, done.Select(document => (InputDocument.NameOf(document.Path), document.Result)), job.Format == "json");
    }
}
