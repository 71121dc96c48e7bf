using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Reports.Lists;

namespace RoutingRules.Reports.Riders;

/// <summary>What came of reading a band's list into a show.</summary>
public sealed record RiderResult
{
    /// <summary>The show with the lines and mixes; null when there are problems.</summary>
    public Show? Show { get; init; }

    /// <summary>What makes it from the show before, in order.</summary>
    public ValueList<ShowEdit> Edits { get; init; }

    /// <summary>Ids of new lines, in the order of the list.</summary>
    public ValueList<string> Lines { get; init; }

    /// <summary>Ids of new feeds, in the order of the list.</summary>
    public ValueList<string> Feeds { get; init; }

    /// <summary>Ids of lines and feeds that the show had and that now are as the list says.</summary>
    public ValueList<string> Changed { get; init; }

    /// <summary>What the list does not say clearly enough, by line; these rows are left out.</summary>
    public ValueList<ListProblem> Questions { get; init; }

    /// <summary>What was decided on the way, by line.</summary>
    public ValueList<ListProblem> Notes { get; init; }

    /// <summary>What is wrong, by line; nothing is taken then.</summary>
    public ValueList<ListProblem> Problems { get; init; }
}
