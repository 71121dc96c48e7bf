namespace RoutingRules.Planning.Losses;

/// <summary>The kinds of things that can fail.</summary>
public enum LossKind
{
    /// <summary>A device: its points, its switch and the links at it.</summary>
    Device,

    /// <summary>A network link, or one that is itself the stream.</summary>
    Link,

    /// <summary>A cable, or one run of cables.</summary>
    Cable,

    /// <summary>A loom: all cables that leave one device on ways of one name, counted without the numbers at the end; two at least.</summary>
    Way,

    /// <summary>A supply: every device that has no other goes with it.</summary>
    Power,

    /// <summary>One connector channel: an input or output on the path of a feed or line.</summary>
    Point,
}
