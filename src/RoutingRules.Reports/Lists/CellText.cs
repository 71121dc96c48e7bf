using System.Text.Json.Nodes;

namespace RoutingRules.Reports.Lists;

/// <summary>Says values of documents as cells.</summary>
internal static class CellText
{
    public const string Yes = "yes";
    public const string No = "no";
    public const string Zone = "zone ";
    public const string Source = "source ";
    public const string Next = "; ";
    public const string Or = " | ";
    public const string By = " by ";

    /// <summary>The cell of a member as the document writes it; null where it leaves it away.</summary>
    public static string Of(ListMember member, JsonNode? value) =>
        value is null
            ? member.Absent
            : member.Kind switch
            {
                CellKind.Number or CellKind.Decimal => value.ToJsonString(),
                CellKind.Flag => value.GetValue<bool>() ? Yes : No,
                CellKind.Ranges => Texts(value, Next, ""),
                CellKind.Destinations => string.Join(Next, value.AsArray().Select(entry => entry!["at"] is { } at ? Text(at) : Anywhere(entry))),
                CellKind.Origin => Origin(value),
                CellKind.Separations => string.Join(Next, value.AsArray().Select(entry => $"{Text(entry!["feed"]!)}{By}{Text(entry["by"]!)}")),
                _ => Text(value),
            };

    private static string Origin(JsonNode value) =>
        value["at"] is { } at ? Texts(at, Next, "")
        : value["source"] is { } source ? Source + Text(source)
        : Anywhere(value);

    private static string Anywhere(JsonNode value)
    {
        string[] parts = [Texts(value["devices"], Or, ""), Texts(value["zones"], Or, Zone)];
        return string.Join(Or, parts.Where(part => part.Length > 0));
    }

    private static string Texts(JsonNode? list, string between, string before) =>
        list is null ? "" : string.Join(between, list.AsArray().Select(entry => before + Text(entry!)));

    private static string Text(JsonNode value) => value.GetValue<string>();
}
