using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>What providers take from findings.</summary>
internal static class FindingPoints
{
    /// <summary>The id of the first entity of a role; null when there is none.</summary>
    public static string? IdOf(this Finding finding, string role)
    {
        foreach (var entity in finding.Entities)
        {
            if (entity.Role == role)
            {
                return entity.Id;
            }
        }

        return null;
    }

    /// <summary>The run of points that an entity names; a width of 0 when there is none.</summary>
    public static (PointIndex First, int Width) RunOf(this FixContext context, Finding finding, string role) =>
        PointRange.TryParse(finding.IdOf(role), out var range, out _) && context.Resolved.Graph.Find(range, out var first) == ConnectionState.Connected
            ? (first, range.Width)
            : (PointIndex.None, 0);

    public static bool Has(this (PointIndex First, int Width) run, PointIndex point) => !point.IsNone && point >= run.First && point < run.First + run.Width;

    /// <summary>The number at a place of a JSON Pointer, such as 3 at place 2 of <c>/patch/routes/3</c>; -1 when there is none.</summary>
    public static int Number(this Finding finding, int place) =>
        finding.Pointer.Split('/') is var parts
        && parts.Length > place + 1
        && int.TryParse(parts[place + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : -1;
}
