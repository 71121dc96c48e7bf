using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Reporting;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Output;

/// <summary>One report in one format, written as documents come in.</summary>
internal sealed class Report : IDisposable
{
    private readonly JsonReport? json;
    private readonly StreamWriter? writer;
    private readonly TextReport? text;
    private AssignmentResult? assignment;

    public Report(ReportFormat format, Stream output, Severity lowest)
    {
        if (format == ReportFormat.Json)
        {
            json = new JsonReport(output);
        }
        else
        {
            writer = Texts.Over(output);
            text = new TextReport(writer, lowest);
        }
    }

    public void Add(DocumentCheck document)
    {
        json?.Add(document);
        text?.Add(document);
        writer?.Flush();
    }

    /// <summary>Adds an assignment, before the check of its result.</summary>
    public void Add(AssignmentResult result, ValueList<ObjectiveLevel> order)
    {
        assignment = result;
        if (writer is not null)
        {
            AssignmentTextReport.Write(result, writer, order);
            writer.Write("\n");
        }
    }

    public void Finish()
    {
        json?.Finish(assignment);
        text?.Finish();
        writer?.Flush();
    }

    public void Dispose()
    {
        json?.Dispose();
        writer?.Dispose();
    }
}
