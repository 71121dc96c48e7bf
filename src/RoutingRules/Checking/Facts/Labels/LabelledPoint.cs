using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Labels;

/// <summary>A point with the label that counts there.</summary>
/// <param name="Point">The point.</param>
/// <param name="Text">The text.</param>
/// <param name="Index">Position of the label in the patch, from 0.</param>
internal readonly record struct LabelledPoint(PointIndex Point, string Text, int Index);
