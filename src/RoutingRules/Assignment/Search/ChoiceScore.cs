using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search;

/// <summary>The 14 numbers of an assignment, with the demands that failed for the tie rule between the second and the third level.</summary>
internal sealed class ChoiceScore
{
    public int[] Numbers { get; } = new int[ObjectiveVector.Length];

    /// <summary>Positions of demands with a failed delivery, ascending.</summary>
    public List<int> Failed { get; } = [];

    /// <summary>Negative when this one is better.</summary>
    public int CompareTo(ChoiceScore other, ObjectiveLevel[] order)
    {
        for (var i = 0; i < ObjectiveNumbers.Levels; i++)
        {
            if (Numbers[i] != other.Numbers[i])
            {
                return Numbers[i].CompareTo(other.Numbers[i]);
            }
        }

        for (var i = 0; i < Failed.Count && i < other.Failed.Count; i++)
        {
            if (Failed[i] != other.Failed[i])
            {
                return other.Failed[i].CompareTo(Failed[i]);
            }
        }

        if (Failed.Count != other.Failed.Count)
        {
            return Failed.Count.CompareTo(other.Failed.Count);
        }

        foreach (var level in order)
        {
            var at = ObjectiveNumbers.Levels + (int)level;
            if (Numbers[at] != other.Numbers[at])
            {
                return Numbers[at].CompareTo(other.Numbers[at]);
            }
        }

        return 0;
    }
}
