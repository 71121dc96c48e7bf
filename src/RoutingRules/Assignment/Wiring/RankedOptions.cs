namespace RoutingRules.Assignment.Wiring;

/// <summary>The options of a task that can be carried out as things stand, the cheapest first, then those most like the input.</summary>
internal sealed class RankedOptions(WiringOptions options, ChoiceApplier applier, WiringState state, ObjectiveLevel[] order)
{
    /// <summary>Options tried.</summary>
    public long Work { get; private set; }

    public List<Choice> Of(WiringTask task)
    {
        var found = new List<Choice>();
        var mark = state.Mark;
        foreach (var choice in options.Of(task))
        {
            Work++;
            if (applier.Apply(task, choice))
            {
                choice.Cost = state.Cost;
                found.Add(choice);
            }

            state.Undo(mark);
        }

        found.Sort(
            (x, y) =>
            {
                var compared = x.Cost.CompareTo(y.Cost, order);
                compared = compared != 0 ? compared : y.Familiar.CompareTo(x.Familiar);
                return compared != 0 ? compared : x.Rank.CompareTo(y.Rank);
            }
        );
        return found;
    }
}
