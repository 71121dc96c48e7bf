using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>A feed of a clean show.</summary>
/// <param name="Role">What it is for.</param>
/// <param name="Width">1, or 2 for a pair.</param>
/// <param name="Boxes">The box of each of its destinations, each box once.</param>
/// <param name="Naming">How destinations are written: 0 by device, 1 by zone, 2 by the output itself.</param>
internal sealed record FeedRecipe(FeedRole Role, int Width, ValueList<int> Boxes, int Naming);
