using System.Globalization;
using System.Text;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>Settles which feed or line each row is about: by id, else by name.</summary>
internal sealed class ListIdentity
{
    private const int MaxStem = 56;

    private readonly IntentList list;
    private readonly IReadOnlyList<object> elements;
    private readonly ListProblems problems;
    private readonly Dictionary<string, int> lines = new(StringComparer.Ordinal);
    private readonly string word;

    private ListIdentity(Show show, IntentList list, ListProblems problems)
    {
        this.list = list;
        this.problems = problems;
        elements = ListElements.Of(show, list);
        word = ListElements.Word(list);
    }

    public static void Settle(Show show, IntentList list, List<ListRow> rows, ListProblems problems) => new ListIdentity(show, list, problems).Settle(rows);

    private void Settle(List<ListRow> rows)
    {
        var byId = elements
            .Select((element, index) => (Id: ListElements.IdOf(element), Index: index))
            .ToLookup(entry => entry.Id, entry => entry.Index, StringComparer.Ordinal);
        var byName = elements
            .Select((element, index) => (Name: ListElements.NameOf(element), Index: index))
            .Where(entry => !string.IsNullOrEmpty(entry.Name))
            .ToLookup(entry => entry.Name!, entry => entry.Index, StringComparer.Ordinal);
        foreach (var row in rows.Where(row => row.Meaning("id").Length > 0))
        {
            var id = row.Meaning("id");
            var here = byId[id].ToList();
            if (here.Count > 1)
            {
                problems.Add(
                    row.Line,
                    null,
                    $"the show has more than one {word} with the id {CellReader.Short(id)}",
                    "Give each its own id in the show first."
                );
            }
            else
            {
                Take(row, id, here.Count == 1 ? here[0] : -1);
            }
        }

        var unnamed = new List<ListRow>();
        foreach (var row in rows.Where(row => row.Meaning("id").Length == 0))
        {
            var name = row.Meaning("name");
            var here = byName[name].ToList();
            if (name.Length == 0)
            {
                problems.Add(row.Line, null, $"the row does not say which {word} it is about", "Fill its id or its name.");
            }
            else if (here.Count > 1)
            {
                problems.Add(
                    row.Line,
                    null,
                    $"{here.Count.ToString(CultureInfo.InvariantCulture)} {word}s have this name: "
                        + $"{string.Join(", ", here.Select(index => ListElements.IdOf(elements[index])))}",
                    "Write the id of the one that is meant."
                );
            }
            else if (here.Count == 1)
            {
                Take(row, ListElements.IdOf(elements[here[0]]), here[0]);
            }
            else
            {
                unnamed.Add(row);
            }
        }

        Name(unnamed);
    }

    private void Take(ListRow row, string id, int index)
    {
        if (!lines.TryAdd(id, row.Line))
        {
            problems.Add(
                row.Line,
                null,
                FormattableString.Invariant($"line {lines[id]} is about the {word} {CellReader.Short(id)} as well"),
                "Keep one row for each, or give a new one its own id."
            );
            return;
        }

        row.Id = id;
        row.Index = index;
    }

    /// <summary>Ids for new rows, made from their names, in the order of the names, so that the order of rows does not matter.</summary>
    private void Name(List<ListRow> rows)
    {
        var taken = elements.Select(ListElements.IdOf).Concat(lines.Keys).ToHashSet(StringComparer.Ordinal);
        foreach (var same in rows.GroupBy(row => row.Meaning("name"), StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            var first = same.First();
            foreach (var row in same.Skip(1))
            {
                problems.Add(
                    row.Line,
                    null,
                    FormattableString.Invariant($"line {first.Line} has the same name, and neither has an id"),
                    "Write ids that tell them apart, or take one of them away."
                );
            }

            var stem = Stem(same.Key);
            var id = stem;
            for (var number = 2; !taken.Add(id); number++)
            {
                id = string.Create(CultureInfo.InvariantCulture, $"{stem}-{number}");
            }

            first.Id = id;
        }
    }

    /// <summary>The letters a to z and digits of a name, in lower case, with a hyphen for each run of anything else.</summary>
    private string Stem(string name)
    {
        var stem = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                stem.Append(char.ToLowerInvariant(letter));
            }
            else if (stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }

            if (stem.Length == MaxStem)
            {
                break;
            }
        }

        var text = stem.ToString().TrimEnd('-');
        return text.Length > 0 ? text : ListElements.Word(list);
    }
}
