namespace RoutingRules.Networks;

/// <summary>A stream on one direction of a link.</summary>
/// <param name="Direction">Twice the position of the link, and one more from its second jack to its first.</param>
/// <param name="Stream">Position of the stream.</param>
/// <param name="Rate">What it takes, in bit/s.</param>
internal readonly record struct LinkCrossing(int Direction, int Stream, double Rate);
