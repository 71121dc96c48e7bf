using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>A row of a list, and which feed or line it is about.</summary>
internal sealed class ListRow(int line, List<ListCell> cells, ValueList<ListWord> words)
{
    public int Line { get; } = line;

    public List<ListCell> Cells { get; } = cells;

    /// <summary>The id; null until <see cref="ListIdentity"/> has settled it, and where it could not.</summary>
    public string? Id { get; set; }

    /// <summary>The position of the feed or line in the show, from 0; -1 for a new one.</summary>
    public int Index { get; set; } = -1;

    public ListCell? Find(string member) => Cells.Find(cell => cell.Member.Name == member);

    /// <summary>What a cell means in the words of the format; empty when it says nothing.</summary>
    public string Meaning(ListCell cell)
    {
        var text = cell.Member.Kind == CellKind.Text ? cell.Text : cell.Text.Trim();
        var word = words.LastOrDefault(word =>
            word.Member == cell.Member.Name && word.Cell.Trim().Equals(cell.Text.Trim(), StringComparison.OrdinalIgnoreCase)
        );
        return word is null ? text : word.Value;
    }

    /// <summary>What the cell of a member means; empty when there is none.</summary>
    public string Meaning(string member) => Find(member) is { } cell ? Meaning(cell) : "";
}
