namespace RoutingRules.Testing;

/// <summary>How a box of a clean show brings receive slots to outputs.</summary>
internal enum BoxRouting
{
    Fixed,
    Clearable,
    Free,
}
