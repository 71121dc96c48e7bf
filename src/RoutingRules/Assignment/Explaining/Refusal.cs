using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Places that a demand does not have, all for one cause.</summary>
public sealed record Refusal
{
    /// <summary>The cause.</summary>
    public required RefusalCause Cause { get; init; }

    /// <summary>The places in point order, neighbours joined; empty when <see cref="Devices"/> says it shorter.</summary>
    public ValueList<PointRange> Points { get; init; }

    /// <summary>Whole devices that are refused, in rig order.</summary>
    public ValueList<Id<Device>> Devices { get; init; }

    /// <summary>The demands that stand there, in the order of the places; empty unless the places are taken.</summary>
    public ValueList<string> By { get; init; }

    /// <summary>Reasons given in the document for marks at the places, each once.</summary>
    public ValueList<string> Reasons { get; init; }

    /// <summary>
    /// The directions of links without room on the way there, as they are in the assignment; empty unless the cause is <see
    /// cref="RefusalCause.LinkFull"/>.
    /// </summary>
    public ValueList<LinkUse> Links { get; init; }

    /// <summary>
    /// The first number of the objective that would be worse, and by how much at least; null unless the cause is <see cref="RefusalCause.Worse"/>.
    /// </summary>
    public ObjectiveDifference? Difference { get; init; }
}
