using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>A line of a clean show.</summary>
internal sealed record LineRecipe(int Box, int Width, PhantomNeed Phantom, bool IsPinned);
