namespace RoutingRules.Resolving;

/// <summary>The dense index of a point in a <see cref="SignalGraph"/>, from 0; <see cref="None"/> is no point.</summary>
/// <remarks>Indices follow device order, then group order, then number, so neighbours in a group are neighbours here. Valid for one graph only.</remarks>
public readonly record struct PointIndex : IComparable<PointIndex>
{
    private readonly int stored;

    /// <summary>A point of a graph.</summary>
    /// <param name="value">0 or more; -1 for none.</param>
    public PointIndex(int value) => stored = value + 1;

    /// <summary>No point; also <c>default</c>.</summary>
    public static PointIndex None => default;

    /// <summary>The index; -1 for none.</summary>
    public int Value => stored - 1;

    /// <summary>True for <see cref="None"/>.</summary>
    public bool IsNone => stored == 0;

    /// <summary>Order of indices; none first.</summary>
    public int CompareTo(PointIndex other) => stored.CompareTo(other.stored);

    /// <summary>The point a number of positions further on; stays none for none.</summary>
    public static PointIndex operator +(PointIndex point, int offset) => point.IsNone ? point : new PointIndex(point.Value + offset);

    /// <summary>The point a number of positions further on; stays none for none.</summary>
    public PointIndex Add(int offset) => this + offset;

    /// <summary>Order of indices.</summary>
    public static bool operator <(PointIndex left, PointIndex right) => left.stored < right.stored;

    /// <summary>Order of indices.</summary>
    public static bool operator >(PointIndex left, PointIndex right) => left.stored > right.stored;

    /// <summary>Order of indices.</summary>
    public static bool operator <=(PointIndex left, PointIndex right) => left.stored <= right.stored;

    /// <summary>Order of indices.</summary>
    public static bool operator >=(PointIndex left, PointIndex right) => left.stored >= right.stored;
}
