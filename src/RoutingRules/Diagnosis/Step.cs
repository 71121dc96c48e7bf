using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>The one connection that would give an unmet want one of its points.</summary>
/// <param name="Hop">What it is.</param>
/// <param name="At">The sink on the way up from the place.</param>
/// <param name="Source">What would have to feed it: a point that carries what is wanted.</param>
internal readonly record struct Step(Hop Hop, PointIndex At, PointIndex Source) : IComparable<Step>
{
    /// <summary>Order of hop, sink and source.</summary>
    public int CompareTo(Step other)
    {
        var order = Hop.CompareTo(other.Hop);
        order = order != 0 ? order : At.CompareTo(other.At);
        return order != 0 ? order : Source.CompareTo(other.Source);
    }
}
