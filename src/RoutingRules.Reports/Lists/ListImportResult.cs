using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Reports.Lists;

/// <summary>What came of reading a list into a show.</summary>
public sealed record ListImportResult
{
    /// <summary>The show with the rows merged; null when there are problems.</summary>
    public Show? Show { get; init; }

    /// <summary>What makes it from the show before, in order; <see cref="ShowText.Edit"/> writes them into its text.</summary>
    public ValueList<ShowEdit> Edits { get; init; }

    /// <summary>What is wrong, by line; empty when the list was read.</summary>
    public ValueList<ListProblem> Problems { get; init; }

    /// <summary>What to mind, by line: names that the show does not have, feeds or lines that were meant to be others, perhaps.</summary>
    public ValueList<ListProblem> Notes { get; init; }

    /// <summary>Ids of new feeds or lines, in the order of the list.</summary>
    public ValueList<string> Added { get; init; }

    /// <summary>What changed, in the order of the list.</summary>
    public ValueList<ListChange> Changed { get; init; }

    /// <summary>Ids of rows that say what the show says.</summary>
    public ValueList<string> Same { get; init; }

    /// <summary>Ids that the list does not have and that were kept, in the order of the show.</summary>
    public ValueList<string> Kept { get; init; }

    /// <summary>Ids that the list does not have and that were taken out, in the order of the show.</summary>
    public ValueList<string> Removed { get; init; }
}
