using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Words;

/// <summary>A word of an open list that the engine does not know and that probably stands for one that it knows.</summary>
internal sealed record DoubtfulWord
{
    /// <summary>What the word says of its owner: <c>role</c>, <c>part</c>, <c>medium</c> and so on.</summary>
    public required string What { get; init; }

    /// <summary>The word as written.</summary>
    public required string Word { get; init; }

    /// <summary>The known word.</summary>
    public required string Meant { get; init; }

    /// <summary>Whose word it is, for people: <c>feed ears-1</c>.</summary>
    public required string Owner { get; init; }

    /// <summary>Whose word it is, for the identity of findings.</summary>
    public required Entity Of { get; init; }

    /// <summary>The place of the word in the show, or of the name of the profile that holds it.</summary>
    public required string Pointer { get; init; }

    /// <summary>The word in a clause: <c>the role 'iem' of feed ears-1</c>.</summary>
    public string Name => $"the {What} '{Word}' of {Owner}";
}
