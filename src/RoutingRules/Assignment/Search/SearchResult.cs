namespace RoutingRules.Assignment.Search;

/// <summary>The best choices a search found for a part.</summary>
internal sealed record SearchResult
{
    /// <summary>A choice for every demand of the show; those of other parts undecided.</summary>
    public required int[] Choices { get; init; }

    public required ChoiceScore Score { get; init; }

    /// <summary>How many numbers, from the first on in the order asked for, are proven; all of them when nothing better exists.</summary>
    public required int ProvenNumbers { get; init; }

    /// <summary>True when nothing better exists.</summary>
    public bool IsProven => ProvenNumbers == ObjectiveVector.Length;
}
