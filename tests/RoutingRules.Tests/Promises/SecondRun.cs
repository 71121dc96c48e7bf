using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Tests.Assignment;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Promises;

/// <summary>Whether what was assigned, assigned again, is itself.</summary>
/// <remarks>
/// What a document does not tell apart is left out, and what a second run may use that the first may not. Two feeds of one bus, or two entries
/// of one feed, where the place of one reads as that of the other. Something pinned that was left out while spares are asked for: what stands then
/// need not leave any. Unlisted signals kept: the second run tolerates what the first one placed. A stream that stays and that a demand joined: one
/// of receivers nobody mentions stays whole the first time and is shared the second time; one with <c>keep</c> keeps, from then on, the receivers
/// that demands brought to it.
/// </remarks>
internal static class SecondRun
{
    /// <summary>Says how a second run differs; null when it does not, or need not be the same.</summary>
    public static string? Differs(TinyInstance tiny, AssignmentResult result)
    {
        if (tiny.Options.KeepUnlisted || IsMistaken(tiny, result) || HasJoined(tiny, result) || LeftOutForSpares(tiny, result))
            return null;

        var again = AssignCases.Assign(result.Show, tiny.Options);
        return AssignCases.Json(again.Show) == AssignCases.Json(result.Show)
            ? null
            : $"The second run writes another patch: {Told(result)} and then {Told(again)}.";
    }

    private static string Told(AssignmentResult result) =>
        $"{result.Objective} ({result.Status}, {result.ProvenNumbers} numbers proven{(result.Notes.IsEmpty ? "" : ", " + string.Join(" ", result.Notes))})";

    /// <summary>True when the place of one entry reads as that of another, whose signal is there as well.</summary>
    private static bool IsMistaken(TinyInstance tiny, AssignmentResult result)
    {
        var read = new AssignmentFacts(result.Show, tiny.Options, _ => null).Demands.Where(demand => demand.Feed is not null).ToList();
        return result.Placements.Any(placement =>
            read.Find(demand => demand.Key == placement.Demand) is { } own
            && read.Exists(other => other != own && other.Existing is { } at && Points(at).Intersect(Points(placement.At)).Any())
        );
    }

    /// <summary>True when something pinned has no place while spares are asked for: what is new must leave them, what stays need not.</summary>
    private static bool LeftOutForSpares(TinyInstance tiny, AssignmentResult result) =>
        tiny.Options.Spares > 0
        && new AssignmentFacts(tiny.Show, tiny.Options, _ => null).Demands.Any(demand =>
            demand is { IsPinned: true, Feed: not null } && result.Unplaced.Any(entry => entry.Demand == demand.Key)
        );

    private static IEnumerable<Point> Points(PointRange run) => Enumerable.Range(0, run.Width).Select(i => run[i]);

    private static bool HasJoined(TinyInstance tiny, AssignmentResult result) =>
        new AssignmentFacts(tiny.Show, tiny.Options, _ => null).StayingStreams.Any(stream =>
            result.Show.Patch.Streams.Any(now => now.Id == stream.Id && now.To.Count > stream.To.Count)
        );
}
