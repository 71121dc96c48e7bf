using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Reporting;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Commands;

/// <summary><c>check</c>: runs the rules on shows.</summary>
internal static class CheckCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var paths = new Argument<string[]>("PATH")
        {
            Description = "Show files, folders (every *.show.json in them and in their subfolders), or - for one show on standard input.",
            Arity = ArgumentArity.OneOrMore,
        }.NamesNoOption();
        var format = ToolOptions.Format("How the result is written to standard output: text for people (usual), json for programs.");
        var report = ToolOptions.Report();
        var config = ToolOptions.Config();
        var profiles = ToolOptions.Profiles();
        var quiet = ToolOptions.Quiet();
        var command = new ToolCommand(
            "check",
            "Check shows: is every mix patched to where it must go, is nothing missing, doubled, swapped or silent? Nothing is changed.",
            "routing-rules check saturday.show.json\nLists what is wrong, where in the file, and what to do about it.",
            "routing-rules check shows/ --report json=result.json\nChecks every show in a folder and also keeps the result for another program.")
        {
            paths, format, report, config, profiles, quiet,
        };
        command.SetAction(parsed =>
        {
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), parsed.GetValue(config), console, cancellation);
            var files = ShowFiles.Expand(parsed.GetRequiredValue(paths));
            var lowest = parsed.GetValue(quiet) ? engine.Config.FailOn : Severity.Note;
            using var reports = new Reports(parsed.GetValue(format) ?? ReportFormat.Text, parsed.GetRequiredValue(report), files, null, lowest, console);
            var code = ExitCode.Clean;
            foreach (var file in files)
            {
                cancellation.ThrowIfCancellationRequested();
                var document = InputDocument.Check(file, console, engine, cancellation);
                reports.Add(document);
                code = ExitCode.Worse(code, CodeOf(document, engine.Config.FailOn));
            }

            reports.Finish();
            return code;
        });
        return command;
    }

    /// <summary>The exit code that one document asks for.</summary>
    public static int CodeOf(DocumentCheck document, Severity failOn) =>
        document.Status == DocumentStatus.Unreadable ? ExitCode.Usage
        : document.Result.Worst >= failOn ? ExitCode.Findings
        : document.Result.Undecided.IsEmpty ? ExitCode.Clean
        : ExitCode.Undecided;
}
