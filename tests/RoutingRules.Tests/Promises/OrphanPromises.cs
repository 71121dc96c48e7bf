using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
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
        Finding[]? findings = null;
        foreach (var output in tracer.Points(PortKind.Output))
        {
            var users = Users(show, tracer, output).ToArray();
            if (
                users.Length == 0
                || tracer.Trace(output) is not (not TraceEnd.Source, var passed)
                || IsClearedOnPurpose(show, passed[^1])
                || IsReserved(show, output)
            )
            {
                continue;
            }

            findings ??= [.. Promise.Engine.Check(show).Findings];
            if (passed.Any(point => HasBrokenClaim(show, tracer, point)) && findings.Any(finding => finding.Rule is "RR1101" or "RR1103"))
            {
                // What does not exist is named once, at the first place that speaks of it.
                continue;
            }

            if (
                !findings.Any(finding =>
                    finding.Entities.Any(entity => passed.Any(point => Names(entity.Id, point)))
                    || users.Concat(passed.SelectMany(point => Claims(show, point))).Any(place => IsIn(finding.Pointer, place))
                    || IsMissedBehind(show, tracer, finding, passed)
                )
            )
            {
                return $"{output} is used by {string.Join(" ", users)} and silent, by {string.Join(" < ", passed)}. Findings: "
                    + $"{string.Join(" ", findings.Select(finding => finding.Rule + finding.Pointer))}";
            }
        }

        return null;
    }

    /// <summary>The finding misses a feed at a pin whose silence has the same beginning; one finding may speak of several feeds.</summary>
    private static bool IsMissedBehind(Show show, NaiveTracer tracer, Finding finding, IEnumerable<Point> passed) =>
        finding.Rule is "RR3001" or "RR3003" or "RR3005"
        && show.Feeds.Where(feed => finding.Entities.Any(entity => entity.Role == "feed" && entity.Id == feed.Id.Value))
            .SelectMany(feed => feed.To.ToArray())
            .Where(entry => entry.At is { } at && tracer.Exists(at))
            .SelectMany(entry => Enumerable.Range(0, entry.At!.Value.Width).Select(position => tracer.Trace(entry.At.Value[position]).Passed))
            .Any(behind => behind.Intersect(passed).Any());

    /// <summary>The places in the document that use an output. Those with an end that does not exist use nothing.</summary>
    private static IEnumerable<string> Users(Show show, NaiveTracer tracer, Point output) =>
        [
            .. show
                .Patch.Routes.Index()
                .Where(route => route.Item.From is { } from && Covers(route.Item.To, output) && tracer.Exists(from))
                .Select(route => $"/patch/routes/{route.Index}"),
            .. show
                .Rig.Cables.Index()
                .Where(cable => Covers(cable.Item.From, output) && tracer.Exists(cable.Item.To))
                .Select(cable => $"/rig/cables/{cable.Index}"),
            .. show
                .Feeds.Index()
                .Where(feed => feed.Item.To.Any(entry => entry.At is { } at && Covers(at, output)) && tracer.Exists(feed.Item.Source))
                .Select(feed => $"/feeds/{feed.Index}"),
        ];

    /// <summary>
    /// The places in the document that speak of the group of a point as a sink and may have meant the point: a fault there explains its silence.
    /// </summary>
    private static IEnumerable<string> Claims(Show show, Point point) =>
        [
            .. show.Patch.Routes.Index().Where(route => IsSameGroup(route.Item.To, point)).Select(route => $"/patch/routes/{route.Index}"),
            .. show.Rig.Cables.Index().Where(cable => IsSameGroup(cable.Item.To, point)).Select(cable => $"/rig/cables/{cable.Index}"),
            .. show
                .Patch.Streams.Index()
                .Where(stream => stream.Item.To.Any(receiver => IsSameGroup(receiver.At, point)))
                .Select(stream => $"/patch/streams/{stream.Index}"),
        ];

    private static bool HasBrokenClaim(Show show, NaiveTracer tracer, Point point) =>
        show.Patch.Routes.Any(route => IsSameGroup(route.To, point) && (!tracer.Exists(route.To) || (route.From is { } from && !tracer.Exists(from))))
        || show.Rig.Cables.Any(cable => IsSameGroup(cable.To, point) && (!tracer.Exists(cable.To) || !tracer.Exists(cable.From)))
        || show.Patch.Streams.Any(stream =>
            stream.To.Any(receiver => IsSameGroup(receiver.At, point) && (!tracer.Exists(receiver.At) || !tracer.Exists(stream.From)))
        );

    private static bool IsSameGroup(PointRange range, Point point) => range.Device == point.Device && range.Group == point.Group;

    private static bool IsIn(string pointer, string place) => pointer == place || pointer.StartsWith(place + "/", StringComparison.Ordinal);

    /// <summary>A reserved output is silent on purpose until its guest comes.</summary>
    private static bool IsReserved(Show show, Point output) => show.Rig.Reserved.Any(mark => Covers(mark.At, output));

    private static bool IsClearedOnPurpose(Show show, Point last) => show.Patch.Routes.Any(route => route.From is null && Covers(route.To, last));

    /// <summary>A finding names a point by its address, by a run that holds it, or, for outputs that lie idle, by its device.</summary>
    private static bool Names(string name, Point point) =>
        name == point.Device.Value || (PointRange.TryParse(name, out var range, out _) && Covers(range, point));

    private static bool Covers(PointRange range, Point point) =>
        range.Device == point.Device && range.Group == point.Group && range.First <= point.Number && point.Number <= range.Last;
}
