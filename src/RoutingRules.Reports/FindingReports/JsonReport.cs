using System.Text.Encodings.Web;
using System.Text.Json;
using RoutingRules.Assignment;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what checking documents came to as JSON after the published report schema (<c>urn:routing-rules:report:1</c>).</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; the same documents give the same bytes. One document is kept in memory at a
/// time. Not thread safe.
/// </remarks>
public sealed class JsonReport : ReportWriter
{
    internal static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly Stream output;
    private readonly Utf8JsonWriter json;
    private readonly Coverage coverage;
    private ReportTotals totals;
    private AssignmentResult? assignment;

    /// <summary>Starts a report.</summary>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="options">What the report needs to know; null for the usual.</param>
    /// <exception cref="ArgumentNullException"><paramref name="output"/> is null.</exception>
    public JsonReport(Stream output, ReportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(output);
        this.output = output;
        coverage = new Coverage(options?.Rules ?? default);
        json = new Utf8JsonWriter(output, Layout);
        json.WriteStartObject();
        json.WriteNumber("schemaVersion", 1);
        json.WriteStartArray("documents");
    }

    /// <inheritdoc/>
    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        coverage.Add(document.Result);
        json.WriteStartObject();
        json.WriteString("path", Whole(document.Path));
        WriteOptional(json, "text", document.TextPath);
        json.WriteString(
            "status",
            document.Status switch
            {
                DocumentStatus.Clean => "clean",
                DocumentStatus.Findings => "findings",
                DocumentStatus.Undecided => "undecided",
                _ => "unreadable",
            }
        );
        CauseJson.Write(json, document);
        FindingJson.WriteList(json, "findings", document.Result.Findings, document);
        WriteExcused(document);
        WriteRules(document.Result);
        json.WriteEndObject();
        json.Flush();
    }

    /// <inheritdoc/>
    public override void Add(AssignmentResult result, ValueList<ObjectiveLevel> order) => assignment = result;

    /// <inheritdoc/>
    public override void Finish()
    {
        json.WriteEndArray();
        json.WriteStartObject("summary");
        json.WriteNumber("documents", totals.Documents);
        json.WriteNumber("errors", totals.Errors);
        json.WriteNumber("warnings", totals.Warnings);
        json.WriteNumber("notes", totals.Notes);
        json.WriteNumber("waived", totals.Waived);
        json.WriteNumber("known", totals.Known);
        json.WriteNumber("undecided", totals.UndecidedSubjects);
        json.WriteEndObject();
        WriteCoverage();
        if (assignment is not null)
        {
            AssignmentJson.Write(json, assignment);
        }

        json.WriteEndObject();
        json.Flush();
        output.Write("\n"u8);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        json.Dispose();
        base.Dispose(disposing);
    }

    private void WriteExcused(DocumentCheck document)
    {
        if (!document.Waived.IsEmpty)
        {
            FindingJson.WriteWaived(json, document);
        }

        if (document.IsCompared)
        {
            FindingJson.WriteList(json, "known", document.Known, document);
            WriteObjects(json, "gone", document.Gone, gone => Write(gone));
        }
    }

    private void Write(BaselineFinding gone)
    {
        json.WriteString("rule", gone.Rule);
        json.WriteString("fingerprint", gone.Fingerprint);
        FindingJson.WriteEntities(json, gone.Entities);
    }

    private void WriteRules(CheckResult result)
    {
        var (passed, notApplicable, undecided) = ReportTotals.Rules(result);
        json.WriteStartObject("rules");
        json.WriteNumber("found", result.Rules.Count(rule => rule.Status == RuleStatus.Found));
        json.WriteNumber("passed", passed);
        json.WriteNumber("notApplicable", notApplicable);
        json.WriteNumber("undecided", undecided);
        if (!result.Undecided.IsEmpty)
        {
            WriteObjects(
                json,
                "undecidedRules",
                result.Undecided,
                subject =>
                {
                    json.WriteString("rule", subject.Rule);
                    json.WriteString("subject", Whole(subject.Subject));
                    json.WriteString("reason", Whole(subject.Reason));
                }
            );
        }

        json.WriteEndObject();
    }

    private void WriteCoverage()
    {
        json.WriteStartObject("coverage");
        WriteObjects(
            json,
            "rules",
            coverage.Rules,
            rule =>
            {
                json.WriteString("rule", rule.Rule.Id);
                json.WriteString("name", rule.Rule.Name);
                json.WriteNumber("found", rule.Found);
                json.WriteNumber("passed", rule.Passed);
                json.WriteNumber("notApplicable", rule.NotApplicable);
                json.WriteNumber("undecided", rule.Undecided);
            }
        );
        WriteList(json, "switchedOff", coverage.SwitchedOff.Select(rule => rule.Id));
        json.WriteEndObject();
    }

    /// <summary>The text with half surrogate pairs replaced: UTF-8 cannot hold them, and a file name or a message of a plugin may bring one.</summary>
    internal static string Whole(string text) =>
        text.AsSpan().IndexOfAnyInRange('\ud800', '\udfff') < 0 ? text : System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(text));
}
