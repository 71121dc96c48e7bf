using RoutingRules.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Input;

/// <summary>Reads the shows and running orders that a question is about.</summary>
internal static class ShowInput
{
    /// <summary>The show; null when it cannot be read in full, which is then reported on standard error.</summary>
    public static Show? Read(string path, CliConsole console, RoutingEngine engine, CancellationToken cancellation) =>
        Of(path, InputDocument.Load(path, console, cancellation), console, engine);

    /// <summary>The show of a loaded document; null when it cannot be read in full, which is then reported on standard error.</summary>
    public static Show? Of(string path, DocumentFile file, CliConsole console, RoutingEngine engine) => Usable(path, file, console, engine, ShowReader.Read);

    /// <summary>The running order; null when it cannot be read in full, which is then reported on standard error.</summary>
    public static RunningOrder? ReadRun(string path, CliConsole console, RoutingEngine engine, CancellationToken cancellation) =>
        Usable(path, InputDocument.Load(path, console, cancellation), console, engine, RunningOrderReader.Read);

    private static T? Usable<T>(string path, DocumentFile file, CliConsole console, RoutingEngine engine, Reader<T> reader)
        where T : class
    {
        var read = file.Problem is { } problem ? new ReadResult<T> { Findings = [problem] } : reader(file.Utf8.Span, null);
        if (read.IsUsable)
        {
            return read.Value;
        }

        new TextReport(console.Error).Add(DocumentCheck.Unreadable(engine, InputDocument.NameOf(path), read.Findings));
        return null;
    }

    private delegate ReadResult<T> Reader<T>(ReadOnlySpan<byte> utf8Json, ReadLimits? limits)
        where T : class;
}
