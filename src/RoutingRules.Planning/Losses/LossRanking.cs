using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>Which losses come first in an answer: those that most people hear.</summary>
internal static class LossRanking
{
    /// <summary>The worst first, equals in the order given.</summary>
    public static List<FoundLoss> Of(List<FoundLoss> losses) =>
        [
            .. losses
                .Select((loss, at) => (Loss: loss, At: at, Key: Weight(loss.Impact)))
                .OrderByDescending(loss => loss.Key, Comparer<int[]>.Create(static (one, other) => one.AsSpan().SequenceCompareTo(other)))
                .ThenBy(loss => loss.At)
                .Select(loss => loss.Loss),
        ];

    private static int[] Weight(LossImpact impact)
    {
        var weight = new int[7];
        foreach (var subject in impact.Subjects)
        {
            var isFeed = subject.Role is not null;
            var isLost = subject.Fate == LossFate.Lost;
            weight[0] += isLost && (subject.IsInEar || subject.Role == FeedRole.Main) ? 1 : 0;
            weight[1] += isFeed && isLost ? 1 : 0;
            weight[2] += isFeed && subject.Fate == LossFate.Partly ? 1 : 0;
            weight[3] += !isFeed && isLost ? 1 : 0;
            weight[4] += !isFeed && !isLost ? 1 : 0;
            weight[5] += subject.Fate == LossFate.BackedUp ? 1 : 0;
        }

        weight[6] = impact.Outputs.Sum(run => run.Width);
        return weight;
    }
}
