using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 1: an output that a route, a cable or a feed uses carries one real source, or a finding speaks of it.</summary>
public sealed class OrphanPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property A_used_output_carries_a_source_or_a_finding_names_it_in_messy_shows() => Promise.Of(ShowArbitraries.Messy(), Orphan);

    [Property(MaxTest = Promise.Cases)]
    public Property A_used_output_carries_a_source_or_a_finding_names_it_in_valid_shows() => Promise.Of(ShowArbitraries.Valid(), Orphan);

    private static string? Orphan(Show show)
    {
        var tracer = new NaiveTracer(show);
        string[]? named = null;
        foreach (var output in tracer.Points(PortKind.Output).Where(output => IsUsed(show, output)))
        {
            var (end, passed) = tracer.Trace(output);
            if (end == TraceEnd.Source || IsClearedOnPurpose(show, passed[^1]))
            {
                continue;
            }

            named ??= [.. Promise.Engine.Check(show).Findings.SelectMany(finding => finding.Entities).Select(entity => entity.Id)];
            if (!named.Any(name => passed.Any(point => Names(name, point))))
            {
                return $"{output} is used and {end}, by {string.Join(" < ", passed)}; no finding names any of these. Named: {string.Join(" ", named)}";
            }
        }

        return null;
    }

    private static bool IsUsed(Show show, Point output) =>
        show.Patch.Routes.Any(route => route.From is not null && Covers(route.To, output))
        || show.Rig.Cables.Any(cable => Covers(cable.From, output))
        || show.Feeds.Any(feed => feed.To.Any(entry => entry.At is { } at && Covers(at, output)));

    private static bool IsClearedOnPurpose(Show show, Point last) => show.Patch.Routes.Any(route => route.From is null && Covers(route.To, last));

    /// <summary>A finding names a point by its address, by a run that holds it, or, for outputs that lie idle, by its device.</summary>
    private static bool Names(string name, Point point) =>
        name == point.Device.Value || (PointRange.TryParse(name, out var range, out _) && Covers(range, point));

    private static bool Covers(PointRange range, Point point) =>
        range.Device == point.Device && range.Group == point.Group && range.First <= point.Number && point.Number <= range.Last;
}
