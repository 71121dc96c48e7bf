using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.ChannelMaps;

/// <summary>Takes a changed show whole or not at all.</summary>
internal static class MapJudgement
{
    /// <summary>The changed show, or what new findings have against it.</summary>
    /// <param name="engine">Judges.</param>
    /// <param name="before">The show before.</param>
    /// <param name="edits">What was changed.</param>
    /// <param name="moves">What takes something else.</param>
    /// <param name="refuses">Says which findings refuse the change when the show did not have them before.</param>
    public static MapImportResult Of(RoutingEngine engine, ResolvedShow before, List<ShowEdit> edits, List<MapMove> moves, Func<Finding, bool> refuses)
    {
        var edited = edits.Aggregate(
            before.Document,
            (show, edit) => edit.Apply(show) ?? throw new InvalidOperationException($"The edit at {edit.Pointer} does not fit.")
        );
        var known = engine.Check(before).Findings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);
        var broken = engine
            .Check(edited)
            .Findings.Where(finding => refuses(finding) && !known.Contains(finding.Fingerprint()))
            .Select(finding => $"{finding.Message} {finding.Remedy}")
            .ToValueList();
        return broken.IsEmpty
            ? new MapImportResult
            {
                Show = edited,
                Edits = edits.ToValueList(),
                Moves = moves.ToValueList(),
            }
            : new MapImportResult { Problems = broken };
    }
}
