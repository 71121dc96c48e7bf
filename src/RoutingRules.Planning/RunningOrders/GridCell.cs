namespace RoutingRules.Planning.RunningOrders;

/// <summary>What is plugged into an input in one act.</summary>
/// <param name="Line">The name of the line, with L or R for a half of a pair.</param>
/// <param name="Stays">True when it has been there since the act before.</param>
internal sealed record GridCell(string Line, bool Stays);
