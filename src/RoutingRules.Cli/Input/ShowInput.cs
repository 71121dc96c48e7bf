using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Reporting;

namespace RoutingRules.Cli.Input;

/// <summary>Reads the one show that a question is about.</summary>
internal static class ShowInput
{
    /// <summary>The show; null when it cannot be read in full, which is then reported on standard error.</summary>
    public static Show? Read(string path, CliConsole console, RoutingEngine engine, CancellationToken cancellation)
    {
        var file = InputDocument.Load(path, console, cancellation);
        var read = file.Problem is { } problem ? new ReadResult<Show> { Findings = [problem] } : ShowReader.Read(file.Utf8.Span);
        if (read.IsUsable)
        {
            return read.Value;
        }

        new TextReport(console.Error).Add(DocumentCheck.Unreadable(engine, InputDocument.NameOf(path), read.Findings));
        return null;
    }
}
