using System.Text.Encodings.Web;
using System.Text.Json;
using RoutingRules.Assignment;
using RoutingRules.Rules;

namespace RoutingRules.Reporting;

/// <summary>Writes what checking documents came to as JSON after the published report schema (<c>urn:routing-rules:report:1</c>).</summary>
/// <remarks>
/// Indented UTF-8 without a byte order mark, LF, a line break at the end; the same documents give the same bytes. One document is kept in memory at a
/// time. Not thread safe.
/// </remarks>
public sealed class JsonReport : IDisposable
{
    private static readonly JsonWriterOptions Layout = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly Stream output;
    private readonly Utf8JsonWriter json;
    private ReportTotals totals;

    /// <summary>Starts a report.</summary>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException"><paramref name="output"/> is null.</exception>
    public JsonReport(Stream output)
    {
        ArgumentNullException.ThrowIfNull(output);
        this.output = output;
        json = new Utf8JsonWriter(output, Layout);
        json.WriteStartObject();
        json.WriteNumber("schemaVersion", 1);
        json.WriteStartArray("documents");
    }

    /// <summary>Writes one document.</summary>
    public void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        json.WriteStartObject();
        json.WriteString("path", Whole(document.Path));
        json.WriteString("status", document.Status switch
        {
            DocumentStatus.Clean => "clean",
            DocumentStatus.Findings => "findings",
            DocumentStatus.Undecided => "undecided",
            _ => "unreadable",
        });
        json.WriteStartArray("findings");
        foreach (var finding in document.Result.Findings)
        {
            Write(finding);
        }

        json.WriteEndArray();
        WriteRules(document.Result);
        json.WriteEndObject();
        json.Flush();
    }

    /// <summary>Writes the totals and, when there was an assignment, what it came to. Nothing can be added afterwards.</summary>
    /// <param name="assignment">The assignment; null when there was none.</param>
    public void Finish(AssignmentResult? assignment = null)
    {
        json.WriteEndArray();
        json.WriteStartObject("summary");
        json.WriteNumber("documents", totals.Documents);
        json.WriteNumber("errors", totals.Errors);
        json.WriteNumber("warnings", totals.Warnings);
        json.WriteNumber("notes", totals.Notes);
        json.WriteNumber("undecided", totals.UndecidedSubjects);
        json.WriteEndObject();
        if (assignment is not null)
        {
            AssignmentJson.Write(json, assignment);
        }

        json.WriteEndObject();
        json.Flush();
        output.Write("\n"u8);
    }

    /// <inheritdoc/>
    public void Dispose() => json.Dispose();

    private void Write(Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("name", finding.Name);
        json.WriteString("severity", PlainText.Word(finding.Severity));
        json.WriteString("message", Whole(finding.Message));
        if (finding.Remedy.Length > 0)
        {
            json.WriteString("remedy", Whole(finding.Remedy));
        }

        json.WriteStartArray("entities");
        foreach (var entity in finding.Entities)
        {
            json.WriteStartObject();
            json.WriteString("role", Whole(entity.Role));
            json.WriteString("id", Whole(entity.Id));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteString("pointer", Whole(finding.Pointer));
        if (finding.Line is { } line)
        {
            json.WriteNumber("line", line);
        }

        if (finding.Column is { } column)
        {
            json.WriteNumber("column", column);
        }

        json.WriteString("fingerprint", finding.Fingerprint());
        json.WriteStartArray("fixes");
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void WriteRules(CheckResult result)
    {
        var (passed, notApplicable, undecided) = ReportTotals.Rules(result);
        json.WriteStartObject("rules");
        json.WriteNumber("passed", passed);
        json.WriteNumber("notApplicable", notApplicable);
        json.WriteNumber("undecided", undecided);
        if (!result.Undecided.IsEmpty)
        {
            json.WriteStartArray("undecidedRules");
            foreach (var subject in result.Undecided)
            {
                json.WriteStartObject();
                json.WriteString("rule", subject.Rule);
                json.WriteString("subject", Whole(subject.Subject));
                json.WriteString("reason", Whole(subject.Reason));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
    }

    /// <summary>The text with half surrogate pairs replaced: UTF-8 cannot hold them, and a file name or a message of a plugin may bring one.</summary>
    internal static string Whole(string text) => text.AsSpan().IndexOfAnyInRange('\ud800', '\udfff') < 0
        ? text
        : System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(text));
}
