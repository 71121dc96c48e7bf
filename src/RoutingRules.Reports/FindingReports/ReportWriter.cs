using RoutingRules.Assignment;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what checking documents came to in one format, document by document.</summary>
/// <remarks>The same documents give the same bytes. Not thread safe. Disposing leaves the stream open.</remarks>
public abstract class ReportWriter : IDisposable
{
    /// <summary>Writes one document.</summary>
    public abstract void Add(DocumentCheck document);

    /// <summary>Writes what an assignment came to, before the check of its result. Formats for test runners and code reviews have no place for it.</summary>
    /// <param name="result">The assignment.</param>
    /// <param name="order">The order of the aims that was asked for; empty for the usual one.</param>
    public virtual void Add(AssignmentResult result, ValueList<ObjectiveLevel> order) { }

    /// <summary>Ends the report: totals, and what was looked at and what not. Nothing can be added afterwards.</summary>
    public abstract void Finish();

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Frees what the writer holds.</summary>
    protected virtual void Dispose(bool disposing) { }
}
