using System.Text.Json;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes findings as SARIF 2.1.0 (OASIS standard of 2020-03-27, errata 01 of 2023-08-28): one run, results as documents come in.</summary>
/// <remarks>
/// Waived findings are results with a suppression of kind <c>external</c>. With a baseline every result has a <c>baselineState</c>. What could not be
/// decided is a tool notification. No times, so that the same documents give the same bytes.
/// </remarks>
internal sealed class SarifReport : ReportWriter
{
    private const string FingerprintKey = "routingRules/v1";

    private readonly Stream output;
    private readonly Utf8JsonWriter json;
    private readonly SarifTool tool;
    private readonly Coverage coverage;
    private readonly List<(string Path, string? Document, UndecidedSubject Subject)> undecided = [];
    private List<ToldCause> told = [];

    public SarifReport(Stream output, ReportOptions options)
    {
        this.output = output;
        coverage = new Coverage(options.Rules);
        tool = new SarifTool(options.Rules);
        json = new Utf8JsonWriter(output, JsonReport.Layout);
        json.WriteStartObject();
        json.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        tool.Write(json);
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartArray("results");
    }

    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        coverage.Add(document.Result);
        told = ToldCause.Of(document);
        foreach (var finding in document.Result.Findings)
        {
            WriteResult(document, finding, null, document.IsCompared ? "new" : null);
        }

        foreach (var waived in document.Waived)
        {
            WriteResult(document, waived.Finding, waived.Waiver, document.IsCompared ? "new" : null);
        }

        foreach (var finding in document.Known)
        {
            WriteResult(document, finding, null, "unchanged");
        }

        foreach (var gone in document.Gone)
        {
            WriteGone(document, gone);
        }

        undecided.AddRange(document.Result.Undecided.Select(subject => (document.PlacePath, document.TextPath is null ? null : document.Path, subject)));
        json.Flush();
    }

    public override void Finish()
    {
        json.WriteEndArray();
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", !undecided.Exists(entry => entry.Subject.IsFault));
        json.WriteStartArray("toolExecutionNotifications");
        foreach (var (path, document, subject) in undecided)
        {
            WriteNotification(path, document, subject);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteStartObject("properties");
        json.WriteStartArray("coverage");
        foreach (var sentence in coverage.Rules.Count == 0 ? [] : coverage.Sentences())
        {
            json.WriteStringValue(sentence);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.Flush();
        output.Write("\n"u8);
    }

    protected override void Dispose(bool disposing)
    {
        json.Dispose();
        base.Dispose(disposing);
    }

    private void WriteResult(DocumentCheck document, Finding finding, Waiver? waiver, string? baselineState)
    {
        json.WriteStartObject();
        tool.WriteRule(json, finding.Rule);
        json.WriteString("level", PlainText.Word(finding.Severity));
        WriteText("message", finding.Message);
        WriteLocations(document.PlacePath, finding.Line, finding.Column, finding.Entities);
        WriteFingerprint(finding.Fingerprint());
        if (waiver is not null)
        {
            json.WriteStartArray("suppressions");
            json.WriteStartObject();
            json.WriteString("kind", "external");
            json.WriteString("status", "accepted");
            json.WriteString("justification", JsonReport.Whole(waiver.Reason));
            json.WriteStartObject("properties");
            json.WriteString("owner", JsonReport.Whole(waiver.Owner));
            json.WriteString("expires", PlainText.Day(waiver.Expires));
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndArray();
        }

        if (baselineState is not null)
        {
            json.WriteString("baselineState", baselineState);
        }

        SarifCauses.Write(json, document, told, finding);
        WriteFixes(document, finding);
        json.WriteStartObject("properties");
        WriteDocument(document);
        json.WriteString("pointer", JsonReport.Whole(finding.Pointer));
        if (finding.Remedy.Length > 0)
        {
            json.WriteString("remedy", JsonReport.Whole(finding.Remedy));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>The offered fixes with edits; SARIF has no place for choices.</summary>
    private void WriteFixes(DocumentCheck document, Finding finding)
    {
        var isOpen = false;
        foreach (var offer in document.OffersFor(finding))
        {
            if (offer.Change is not { } change)
            {
                continue;
            }

            if (!isOpen)
            {
                json.WriteStartArray("fixes");
                isOpen = true;
            }

            json.WriteStartObject();
            WriteText("description", $"{offer.Fix.Title} ({PlainText.Word(offer.Fix.Safety)})");
            json.WriteStartArray("artifactChanges");
            json.WriteStartObject();
            json.WriteStartObject("artifactLocation");
            json.WriteString("uri", SarifTool.Uri(document.PlacePath));
            json.WriteEndObject();
            json.WriteStartArray("replacements");
            json.WriteStartObject();
            json.WriteStartObject("deletedRegion");
            json.WriteNumber("startLine", change.Start.Line);
            json.WriteNumber("startColumn", change.Start.Column);
            json.WriteNumber("endLine", change.End.Line);
            json.WriteNumber("endColumn", change.End.Column);
            json.WriteEndObject();
            WriteText("insertedContent", change.Text);
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        if (isOpen)
        {
            json.WriteEndArray();
        }
    }

    private void WriteGone(DocumentCheck document, BaselineFinding gone)
    {
        json.WriteStartObject();
        tool.WriteRule(json, gone.Rule);
        json.WriteString("level", "none");
        WriteText("message", "Known to the baseline and no longer found.");
        WriteLocations(document.PlacePath, null, null, gone.Entities);
        WriteFingerprint(gone.Fingerprint);
        json.WriteString("baselineState", "absent");
        if (document.TextPath is not null)
        {
            json.WriteStartObject("properties");
            WriteDocument(document);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    /// <summary>Which of several documents of one text it is.</summary>
    private void WriteDocument(DocumentCheck document)
    {
        if (document.TextPath is not null)
        {
            json.WriteString("document", JsonReport.Whole(document.Path));
        }
    }

    private void WriteFingerprint(string fingerprint)
    {
        json.WriteStartObject("partialFingerprints");
        json.WriteString(FingerprintKey, fingerprint);
        json.WriteEndObject();
    }

    private void WriteLocations(string path, int? line, int? column, ValueList<Entity> entities)
    {
        json.WriteStartArray("locations");
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", SarifTool.Uri(path));
        json.WriteEndObject();
        if (line is not null)
        {
            json.WriteStartObject("region");
            json.WriteNumber("startLine", line.Value);
            json.WriteNumber("startColumn", column ?? 1);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        if (!entities.IsEmpty)
        {
            WriteObjects(
                json,
                "logicalLocations",
                entities,
                entity =>
                {
                    json.WriteString("fullyQualifiedName", JsonReport.Whole(entity.Id));
                    json.WriteString("kind", JsonReport.Whole(entity.Role));
                }
            );
        }

        json.WriteEndObject();
        json.WriteEndArray();
    }

    private void WriteNotification(string path, string? document, UndecidedSubject subject)
    {
        json.WriteStartObject();
        if (subject.Rule != DocumentCheck.EveryRule)
        {
            json.WriteStartObject("associatedRule");
            tool.WriteReference(json, subject.Rule);
            json.WriteEndObject();
        }

        json.WriteString("level", subject.IsFault ? "error" : "warning");
        WriteText("message", subject.Rule == DocumentCheck.EveryRule ? subject.Reason : $"Not decided about {subject.Subject}: {subject.Reason}");
        WriteLocations(path, null, null, default);
        if (document is not null)
        {
            json.WriteStartObject("properties");
            json.WriteString("document", JsonReport.Whole(document));
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private void WriteText(string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", JsonReport.Whole(text));
        json.WriteEndObject();
    }
}
