using System.Buffers;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Documents.Tables;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Reports.Lists;

/// <summary>Reads a row over the feed or line that the show has. What values may be is left to the tables of the format.</summary>
internal sealed class RowReader(IntentList list, ListProblems problems, ListProblems notes)
{
    private readonly HashSet<string> lacking = new(StringComparer.Ordinal);

    /// <summary>The feed or line; null when something is wrong with it.</summary>
    public object? Read(ListRow row, object? before)
    {
        var old = before is null ? default(JsonElement?) : ElementJson.Of(before);
        var json = old is { } element ? JsonObject.Create(element)! : [];
        var set = new Dictionary<string, JsonNode?>(StringComparer.Ordinal);
        var bad = new HashSet<string>(StringComparer.Ordinal);
        foreach (var cell in row.Cells.Where(cell => cell.Member.Name != "id"))
        {
            try
            {
                if (TrySet(json[cell.Member.Name], cell, row.Meaning(cell), before is not null, out var value))
                {
                    set[cell.Member.Name] = value;
                }
            }
            catch (FormatException fault)
            {
                bad.Add(cell.Member.Name);
                problems.Add(cell.Line, cell.Header, fault.Message, "", row.Cells.IndexOf(cell));
            }
        }

        if (before is null)
        {
            set["id"] = row.Id;
        }

        if (set.Count == 0 && bad.Count == 0)
        {
            return before;
        }

        return list == IntentList.Feeds
            ? ListExtensions.Carry((Feed?)before, Load(Text(old, set), IntentTables.Feed, row, bad), row, notes)
            : ListExtensions.Carry((Line?)before, Load(Text(old, set), IntentTables.Line, row, bad));
    }

    /// <summary>The value of a cell, null for none; false when the show says it already.</summary>
    private static bool TrySet(JsonNode? old, ListCell cell, string meaning, bool isThere, out JsonNode? value)
    {
        value = null;
        var said = CellText.Of(cell.Member, old);
        if (isThere && cell.Text == said)
        {
            return false;
        }

        if (meaning.Length == 0)
        {
            return old is not null;
        }

        value = CellReader.Read(cell.Member, meaning);
        return !isThere || CellText.Of(cell.Member, value) != said;
    }

    /// <summary>The old text of the feed or line with some members set or, where null, left away; the text of the others stays.</summary>
    private static byte[] Text(JsonElement? old, Dictionary<string, JsonNode?> set)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            foreach (var member in old?.EnumerateObject().Where(member => !set.ContainsKey(member.Name)) ?? [])
            {
                json.WritePropertyName(member.Name);
                json.WriteRawValue(member.Value.GetRawText(), skipInputValidation: true);
            }

            foreach (var (name, value) in set.Where(entry => entry.Value is not null))
            {
                json.WritePropertyName(name);
                value!.WriteTo(json);
            }

            json.WriteEndObject();
        }

        return buffer.WrittenSpan.ToArray();
    }

    private T? Load<T>(byte[] utf8, ObjectTable<T> table, ListRow row, HashSet<string> bad)
        where T : class
    {
        var read = DocumentReader.Read(utf8, table, ShowTable.Version, [], null);
        foreach (var finding in read.Findings)
        {
            var member = finding.Pointer!.Split('/') is [_, var name, ..] ? name : "";
            if (bad.Add(member))
            {
                Tell(finding, member, row);
            }
        }

        return read.IsUsable && bad.Count == 0 ? read.Value : null;
    }

    private void Tell(Finding finding, string member, ListRow row)
    {
        var word = ListElements.Word(list);
        var cell = row.Find(member);
        var message = finding.Message;
        message = message.StartsWith($"\"{member}\": ", StringComparison.Ordinal) ? message[(member.Length + 4)..] : message;
        if (finding.Rule != ReadingRules.MemberMissing.Id || finding.Pointer != $"/{member}")
        {
            problems.Add(cell?.Line ?? row.Line, cell?.Header, message, finding.Remedy, cell is null ? 0 : row.Cells.IndexOf(cell));
        }
        else if (cell is not null)
        {
            problems.Add(cell.Line, cell.Header, $"the cell is empty, and every {word} needs it", "Fill it.", row.Cells.IndexOf(cell));
        }
        else if (lacking.Add(member))
        {
            problems.Add(
                row.Line,
                null,
                $"the {word} {row.Id} is new and needs {member}, for which the list has no column",
                $"Add a column {member}; or, if the {word} is there already, write its id or its name as the show has it."
            );
        }
    }
}
