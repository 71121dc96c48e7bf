using RoutingRules.Documents;
using RoutingRules.Documents.Upgrading;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Input;

/// <summary>A show that a command writes anew, with the text to edit: that of the present format version.</summary>
internal sealed record ShowToEdit(string Name, Show Show, ReadOnlyMemory<byte> Utf8)
{
    /// <summary>Reads a show in full; null when it cannot be, which standard error then says.</summary>
    /// <param name="path">The file, or that of standard input.</param>
    /// <param name="done">What would have been done to it, such as "mended".</param>
    /// <param name="engine">The engine that will do it.</param>
    /// <param name="console">Where it is read and told.</param>
    /// <param name="cancellation">Stops reading.</param>
    public static ShowToEdit? Read(string path, string done, RoutingEngine engine, CliConsole console, CancellationToken cancellation)
    {
        var name = InputDocument.NameOf(path);
        var loaded = InputDocument.Load(path, console, cancellation);
        var read = loaded.Problem is { } problem ? new ReadResult<Show> { Findings = [problem] } : ShowReader.Read(loaded.Utf8.Span);
        if (read.IsUsable)
        {
            return new ShowToEdit(name, read.Value!, DocumentUpgrade.ShowText(loaded.Utf8));
        }

        new TextReport(console.Error).Add(DocumentCheck.Unreadable(engine, name, read.Findings));
        CliRunner.Say(console, $"'{name}' cannot be read in full, so nothing was {done}; mend what the report names first.");
        return null;
    }
}
