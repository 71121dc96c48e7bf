namespace RoutingRules.Assignment;

/// <summary>The best choices a search found for a part.</summary>
internal sealed class SearchResult
{
    /// <summary>A choice for every demand of the show; those of other parts undecided.</summary>
    public required int[] Choices { get; init; }

    public required ChoiceScore Score { get; init; }

    /// <summary>True when nothing better exists.</summary>
    public required bool IsProven { get; init; }

    /// <summary>How many numbers, in the order asked for, are proven when not all are.</summary>
    public int ProvenNumbers { get; init; }
}
