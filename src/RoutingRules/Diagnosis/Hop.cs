namespace RoutingRules.Diagnosis;

/// <summary>The kinds of connection that a hand makes.</summary>
internal enum Hop
{
    Route,
    Stream,
    Cable,
}
