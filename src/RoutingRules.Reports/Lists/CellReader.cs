using System.Globalization;
using System.Text.Json.Nodes;

namespace RoutingRules.Reports.Lists;

/// <summary>Reads cells into values of documents. What a value may be, the tables of the format say afterwards.</summary>
internal static class CellReader
{
    private static readonly string[] Yes = [CellText.Yes, "y", "x", "true", "1"];
    private static readonly string[] No = [CellText.No, "n", "false", "0"];
    private static readonly char[] Blanks = [' ', '\t', '\n', '\r', '\u00a0'];

    /// <summary>The value of a cell that is not empty.</summary>
    /// <exception cref="FormatException">The cell does not have the form; the message says what to write.</exception>
    public static JsonNode Read(ListMember member, string cell) =>
        member.Kind switch
        {
            CellKind.Text => JsonValue.Create(cell)!,
            CellKind.Word => JsonValue.Create(cell.Trim().ToLowerInvariant())!,
            CellKind.Name => JsonValue.Create(cell.Trim())!,
            CellKind.Number => Number(cell),
            CellKind.Decimal => Decimal(cell),
            CellKind.Flag => Flag(cell),
            CellKind.Ranges => Texts(Entries(cell)),
            CellKind.Destinations => new JsonArray([.. Entries(cell).Select(Destination)]),
            CellKind.Origin => Origin(cell),
            CellKind.Separations => new JsonArray([.. Entries(cell).Select(Separation)]),
            _ => throw new InvalidOperationException($"There is no cell of kind {member.Kind}."),
        };

    private static JsonValue Number(string cell) =>
        int.TryParse(cell.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? JsonValue.Create(number)
            : throw new FormatException($"'{Short(cell)}' is no whole number; write digits only, such as 8");

    private static JsonValue Decimal(string cell) =>
        double.TryParse(cell.Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var number)
        && double.IsFinite(number)
            ? JsonValue.Create(number)
            : throw new FormatException($"'{Short(cell)}' is no number; write digits with a point where needed, such as 12.5");

    private static JsonValue Flag(string cell)
    {
        var word = cell.Trim();
        return Yes.Contains(word, StringComparer.OrdinalIgnoreCase) ? JsonValue.Create(true)
            : No.Contains(word, StringComparer.OrdinalIgnoreCase) ? JsonValue.Create(false)
            : throw new FormatException($"'{Short(cell)}' is neither yes nor no; write yes or no, or leave the cell empty where nothing is to be said");
    }

    private static JsonObject Destination(string entry) =>
        entry.Contains('/', StringComparison.Ordinal) ? new JsonObject { ["at"] = Pinned(entry) } : Anywhere(entry);

    private static JsonObject Origin(string cell)
    {
        var words = cell.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
        if (
            words is [var first, var point]
            && first.Equals(CellText.Source.TrimEnd(), StringComparison.OrdinalIgnoreCase)
            && point.Contains('/', StringComparison.Ordinal)
        )
        {
            return new JsonObject { ["source"] = point };
        }

        var entries = Entries(cell);
        return entries.Length == 1 && !entries[0].Contains('/', StringComparison.Ordinal) ? Anywhere(entries[0])
            : entries.All(entry => entry.Contains('/', StringComparison.Ordinal)) ? new JsonObject { ["at"] = Texts([.. entries.Select(Pinned)]) }
            : throw new FormatException(
                "a line enters at inputs, joined by semicolons, or at any of some devices and zones, joined by |, not both; write box-l/in/3; "
                    + "box-r/in/3, or box-l | zone stage-right"
            );
    }

    private static string Pinned(string entry) =>
        !entry.Contains('|', StringComparison.Ordinal)
            ? entry
            : throw new FormatException(
                $"'{Short(entry)}' has a point among devices and zones; a point stands alone, such as box-l/out/3-4, with a semicolon before the next place"
            );

    /// <summary>Devices by their ids and zones behind the word, in any order.</summary>
    private static JsonObject Anywhere(string entry)
    {
        var devices = new JsonArray();
        var zones = new JsonArray();
        foreach (var name in entry.Split('|'))
        {
            var words = name.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 1)
            {
                devices.Add((JsonNode)words[0]);
            }
            else if (words.Length == 2 && words[0].Equals(CellText.Zone.TrimEnd(), StringComparison.OrdinalIgnoreCase))
            {
                zones.Add((JsonNode)words[1]);
            }
            else
            {
                throw new FormatException(
                    $"'{Short(name.Trim())}' is no place; write a device, such as box-l, a zone, such as zone stage-left, several of them with | "
                        + "between, or a point, such as box-l/out/3-4"
                );
            }
        }

        var place = new JsonObject();
        foreach (var (member, list) in new[] { ("devices", devices), ("zones", zones) })
        {
            if (list.Count > 0)
            {
                place[member] = list;
            }
        }

        return place;
    }

    private static JsonObject Separation(string entry)
    {
        var words = entry.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 3 && words[1].Equals(CellText.By.Trim(), StringComparison.OrdinalIgnoreCase)
            ? new JsonObject { ["feed"] = words[0], ["by"] = words[2].ToLowerInvariant() }
            : throw new FormatException(
                $"'{Short(entry)}' says of no feed what is not to be shared; write main-r by device, main-r by power or main-r by link"
            );
    }

    private static string[] Entries(string cell)
    {
        var entries = cell.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return entries.Length > 0
            ? entries
            : throw new FormatException($"'{Short(cell)}' names nothing; write something between the semicolons, or leave the cell empty");
    }

    private static JsonArray Texts(string[] entries) => new([.. entries.Select(entry => (JsonNode)entry)]);

    /// <summary>The beginning of a text, for messages.</summary>
    public static string Short(string text) => text.Length <= 60 ? text : text[..(char.IsHighSurrogate(text[59]) ? 59 : 60)] + "…";
}
