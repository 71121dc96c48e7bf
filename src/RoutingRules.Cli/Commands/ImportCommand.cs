using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Engine.Configuration;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Cli.Commands;

/// <summary><c>import</c>: reads a list of feeds or lines, or a channel map of a device, into a show.</summary>
internal static class ImportCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input. It is changed only with --in-place." }.NamesNoOption();
        var from = new Argument<string>("LIST")
        {
            Description = "The list as CSV in UTF-8, or - for standard input; the first row holds the headers.",
        }.NamesNoOption();
        var list = ToolOptions.Word("--list", ListChoices.Lists, "What the list is of: feeds or lines.");
        var separator = ToolOptions.Word(
            "--separator",
            ListChoices.Separators,
            "What stands between cells; without it, what the configuration says, else the first row tells."
        );
        var map = ToolOptions.Word(
            "--map",
            ListChoices.Maps,
            "Instead of a list, LIST is a map of a device, as export --map or the device itself gives it: is-08 of its routes, 1722.1 of what its "
                + "receive slots take. The show changes only where the map says something else."
        );
        var device = new Option<string?>("--device") { HelpName = "ID", Description = "The device that --map is about." };
        var ignore = new Option<string[]>("--ignore")
        {
            HelpName = "HEADER",
            Description = "Do not read this column; may be given several times. A column that is neither known nor ignored is an error.",
            DefaultValueFactory = _ => [],
        };
        var remove = new Option<bool>("--remove-absent")
        {
            Description = "Take feeds or lines that the list does not have out of the show; without it they stay.",
        };
        var dryRun = new Option<bool>("--dry-run") { Description = "Change nothing; say what would be changed." };
        var @out = new Option<string?>("--out") { HelpName = "FILE", Description = "Write the show to a file; without it the show goes to standard output." };
        var inPlace = new Option<bool>("--in-place") { Description = "Write the show over the file itself." };
        var format = ToolOptions.TextOrJson(
            "How the account on standard output is written, together with --dry-run, --out or --in-place: text (usual) or json."
        );
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "import",
            "Read a list of feeds or lines, as export or a crew's spreadsheet writes it, into a show. A row is about the feed or line of its id, "
                + "or without one that of its name; a cell changes its member, and everything else stays, byte for byte. With any error in the list "
                + "nothing is written.\nAn empty cell takes away what the member says. Columns and words by other names stand in the configuration, "
                + "under lists.",
            "routing-rules import saturday.show.json lines.csv --list lines --dry-run\nSays which lines would be new, changed and kept.",
            "routing-rules import saturday.show.json lines.csv --list lines --out edited.show.json\nWrites the show with the list in it."
        )
        {
            file,
            from,
            list,
            separator,
            ignore,
            remove,
            map,
            device,
            dryRun,
            @out,
            inPlace,
            format,
            setup,
        };
        command.SetAction(parsed =>
        {
            var job = new Job(
                parsed.GetRequiredValue(file),
                parsed.GetRequiredValue(from),
                new MapChoice(parsed.GetValue(list), parsed.GetValue(map), parsed.GetValue(device)),
                parsed.GetValue(dryRun),
                parsed.GetValue(@out),
                parsed.GetValue(inPlace),
                parsed.GetValue(format)
            );
            Refuse(job);
            if (
                job.What.IsMap
                && (parsed.GetValue(separator) is not null || parsed.GetValue(remove) || parsed.GetRequiredValue(ignore).Length > 0 || job.Format is not null)
            )
            {
                throw new UsageException("--separator, --ignore, --remove-absent and --format are for lists; leave them away with --map.");
            }

            var (engine, loaded) = setup.Create(parsed, [job.Path], console, cancellation);
            var options = new ListImportOptions
            {
                Config = ListChoices.With(loaded.Config.Lists, parsed.GetValue(separator)),
                Ignore = parsed.GetRequiredValue(ignore).ToValueList(),
                RemovesAbsent = parsed.GetValue(remove),
            };
            return Run(job, engine, loaded, options, console, cancellation);
        });
        return command;
    }

    private sealed record Job(string Path, string From, MapChoice What, bool IsDry, string? OutPath, bool IsInPlace, string? Format)
    {
        public bool ShowsText => !IsDry && OutPath is null && !IsInPlace;
    }

    private static void Refuse(Job job)
    {
        job.What.Refuse();
        ListInput.RefuseBoth(job.Path, job.From);
        var problem =
            job.OutPath is not null && job.IsInPlace ? "--out and --in-place cannot be had together; take one of them."
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

    private static int Run(Job job, RoutingEngine engine, LoadedConfig loaded, ListImportOptions options, CliConsole console, CancellationToken cancellation)
    {
        var outPath = job.IsInPlace ? job.Path : job.OutPath;
        var document = InputDocument.Load(job.Path, console, cancellation);
        if (ShowInput.Of(job.Path, document, console, engine) is not { } show)
        {
            return ExitCode.Usage;
        }

        var from = InputDocument.NameOf(job.From);
        var list = ListInput.Load(job.From, console, cancellation);

        string[] inputs = job.IsInPlace ? [job.From, .. loaded.Files] : [job.Path, job.From, .. loaded.Files];
        using var target = outPath is null ? null : OutputFile.Begin(outPath, inputs);
        var read = job.What.IsMap ? job.What.Read(engine, show, list) : null;
        var result = read ?? Read(job, show, list, options, from, console);
        if (result.Show is null)
        {
            var lines = result.Problems.Select(remark => $"{from}: {remark}");
            CliRunner.Say(console, $"the {(job.What.IsMap ? "map" : "list")} was not read, and nothing was written.\n{string.Join('\n', lines)}");
            return ExitCode.Usage;
        }

        var edited = result.Edits.IsEmpty
            ? new EditedText
            {
                Utf8 = document.Utf8,
                Patch = null,
                IsRewritten = false,
            }
            : ShowText.Edit(document.Utf8.Span, result.Edits, result.Show);
        if (job.ShowsText)
        {
            CliRunner.Say(console, $"{result.Brief}; use --dry-run to see each of them.{string.Concat(result.Notes.Select(note => $"\n{from}: {note}"))}");
        }
        else if (job.Format != "json")
        {
            console.Output.Write(Texts.Utf8.GetBytes(SafeText.Show($"{InputDocument.NameOf(job.Path)}: {result.Account}")));
        }

        (target?.Content ?? (job.ShowsText ? console.Output : null))?.Write(edited.Utf8.Span);
        target?.Commit();
        if (edited.IsRewritten)
        {
            CliRunner.Say(console, "the whole document is written anew, because the change could not be written into its text; its layout is not kept.");
        }

        return ExitCode.Clean;
    }

    private static Imported Read(Job job, Show show, ReadOnlyMemory<byte> list, ListImportOptions options, string from, CliConsole console)
    {
        var result = ListImport.Read(show, list.Span, job.What.Kind, options);
        if (job.Format == "json")
        {
            ListImportJson.Write(result, job.What.Kind, InputDocument.NameOf(job.Path), from, console.Output);
        }

        return new Imported(
            result.Show,
            result.Edits,
            result.Problems.Select(problem => problem.ToString()).ToValueList(),
            result.Notes.Select(note => note.ToString()).ToValueList(),
            result.Show is null ? "" : ImportAccount.Heading(job.What.Kind, result, false),
            result.Show is null ? "" : ImportAccount.Text(from, job.What.Kind, result, job.IsDry)
        );
    }
}
