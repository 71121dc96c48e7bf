namespace RoutingRules.Planning.Changeovers;

/// <summary>Which steps at one place become one task.</summary>
internal enum FoldKind
{
    /// <summary>The step is a task of its own.</summary>
    None,

    /// <summary>All that is loaded into a device without anything else in between; labels at any time after.</summary>
    Load,

    /// <summary>All plugs that go for good without another change on the stage in between.</summary>
    Pull,
}
