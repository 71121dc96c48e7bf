using System.Text;
using System.Text.Json.Nodes;
using RoutingRules.Configuration;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Lists;

/// <summary>Writes the feeds or lines of a show as CSV after RFC 4180, to be edited and read back by <see cref="ListImport"/>.</summary>
/// <remarks>
/// A head row with a column for each member, then one row for each feed or line in their order; cells quoted where they must be, rows ended by CR LF.
/// Lists stand in one cell: entries with <c>; </c> between, devices and zones of which any will do with <c> | </c> between, zones behind the word
/// <c>zone</c>. Flags are <c>yes</c> or <c>no</c>. Texts that a spreadsheet would take for formulas begin with an apostrophe (<see cref="FormulaGuard"/>).
/// Content of other tools (<c>extensions</c>) has no column. Thread safe.
/// </remarks>
public static class ListExport
{
    /// <summary>Writes a list.</summary>
    /// <param name="show">The show.</param>
    /// <param name="list">Which list.</param>
    /// <param name="config">What columns are called, and the separator; null for the names of the members and a comma.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">The configuration calls a column like another member, so that the list could not be read back.</exception>
    public static string Write(Show show, IntentList list, ListsConfig? config = null)
    {
        ArgumentNullException.ThrowIfNull(show);
        config ??= new ListsConfig();
        var members = ListMember.Of(list);
        var headers = new ListHeaders(list, list == IntentList.Feeds ? config.Feeds : config.Lines, default);
        var separator = CsvReader.Of(config.Separator ?? ListSeparator.Comma);
        var output = new StringBuilder();
        Append(output, members.Select(headers.For), separator);
        foreach (var element in ListElements.Of(show, list))
        {
            var json = JsonObject.Create(ElementJson.Of(element))!;
            Append(output, members.Select(member => CellText.Of(member, json[member.Name])), separator);
        }

        return output.ToString();
    }

    private static void Append(StringBuilder output, IEnumerable<string> cells, char separator) =>
        CsvText.AppendRow(output, cells.Select(FormulaGuard.Neutralise).ToValueList(), separator);
}
