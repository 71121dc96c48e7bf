using RoutingRules.Assignment;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Output;

/// <summary>All reports of one run: at most one on standard output, any number in files, the files put in place at the end.</summary>
internal sealed class ReportOutput : IDisposable
{
    private readonly List<ReportWriter> reports = [];
    private readonly List<OutputFile> files = [];

    /// <param name="onOutput">The format on standard output; null for none.</param>
    /// <param name="targets">The files.</param>
    /// <param name="inputs">Files that must not be replaced.</param>
    /// <param name="other">Another file of the run that no report may take the place of; null for none.</param>
    /// <param name="options">What reports need to know; files list every finding, however mild.</param>
    /// <param name="console">Standard output.</param>
    public ReportOutput(
        ReportFormat? onOutput,
        IReadOnlyList<ReportTarget> targets,
        IReadOnlyList<string> inputs,
        OutputFile? other,
        ReportOptions options,
        CliConsole console
    )
    {
        try
        {
            foreach (var target in targets)
            {
                var file = OutputFile.Begin(target.Path, inputs);
                files.Add(file);
                if (file.Target == other?.Target || files.Count(earlier => earlier.Target == file.Target) > 1)
                {
                    throw new UsageException($"two outputs are to go to '{target.Path}'; give each its own file.");
                }

                reports.Add(target.Format.Create(file.Content, options with { Lowest = Severity.Note }));
            }

            if (onOutput is { } format)
            {
                reports.Add(format.Create(console.Output, options));
            }
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    public void Add(DocumentCheck document) => reports.ForEach(report => report.Add(document));

    public void Add(AssignmentResult result, ValueList<ObjectiveLevel> order) => reports.ForEach(report => report.Add(result, order));

    /// <summary>Ends the reports and puts the files in place.</summary>
    public void Finish()
    {
        reports.ForEach(report => report.Finish());
        reports.ForEach(report => report.Dispose());
        reports.Clear();
        files.ForEach(file => file.Commit());
    }

    public void Dispose()
    {
        try
        {
            reports.ForEach(report => report.Dispose());
        }
        finally
        {
            files.ForEach(file => file.Dispose());
        }
    }
}
