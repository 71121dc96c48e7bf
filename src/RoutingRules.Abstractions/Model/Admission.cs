namespace RoutingRules.Model;

/// <summary>Remembers which show was found to be what a document can say. All are equal, so that shows are compared by what they say alone.</summary>
internal readonly struct Admission(Show show, bool isWhole) : IEquatable<Admission>
{
    /// <summary>The show that was looked at: that which holds this, or the one it was made from by <c>with</c>; null for none.</summary>
    public Show? Show { get; } = show;

    /// <summary>False when it is what was left of a document with mistakes: good to work with, but not to be written without another look.</summary>
    public bool IsWhole { get; } = isWhole;

    public bool Equals(Admission other) => true;

    public override bool Equals(object? obj) => obj is Admission;

    public override int GetHashCode() => 0;
}
