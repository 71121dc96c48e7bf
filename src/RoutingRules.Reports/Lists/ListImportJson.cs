using System.Text.Json;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using static RoutingRules.Reports.FindingReports.JsonMembers;

namespace RoutingRules.Reports.Lists;

/// <summary>Writes what came of reading a list as JSON after the published schema (<c>urn:routing-rules:import:1</c>).</summary>
/// <remarks>Indented UTF-8 without a byte order mark, LF, a line break at the end; the same result gives the same bytes.</remarks>
public static class ListImportJson
{
    /// <summary>Writes an account.</summary>
    /// <param name="result">The result.</param>
    /// <param name="list">What was read.</param>
    /// <param name="path">What the show is called.</param>
    /// <param name="from">What the list is called.</param>
    /// <param name="output">Where it is written; stays open.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static void Write(ListImportResult result, IntentList list, string path, string from, Stream output)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(output);
        WriteDocument(
            output,
            json =>
            {
                json.WriteString("path", JsonReport.Whole(path));
                json.WriteString("from", JsonReport.Whole(from));
                json.WriteString("list", Word(list));
                json.WriteBoolean("merged", result.Show is not null);
                Write(json, "problems", result.Problems);
                Write(json, "notes", result.Notes);
                WriteList(json, "added", result.Added);
                WriteObjects(
                    json,
                    "changed",
                    result.Changed,
                    change =>
                    {
                        json.WriteString("id", change.Id);
                        WriteList(json, "members", change.Members);
                    }
                );
                WriteList(json, "same", result.Same);
                WriteList(json, "kept", result.Kept);
                WriteList(json, "removed", result.Removed);
            }
        );
    }

    private static void Write(Utf8JsonWriter json, string name, ValueList<ListProblem> remarks)
    {
        WriteObjects(
            json,
            name,
            remarks,
            remark =>
            {
                WriteOptional(json, "line", remark.Line);
                WriteOptional(json, "column", remark.Column);
                json.WriteString("message", JsonReport.Whole(remark.Message));
                json.WriteString("remedy", JsonReport.Whole(remark.Remedy));
            }
        );
    }
}
