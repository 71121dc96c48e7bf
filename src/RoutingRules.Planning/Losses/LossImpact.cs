using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>What one loss, or several at once, does to a show.</summary>
public sealed record LossImpact
{
    /// <summary>What fails; one thing, or two for a pair.</summary>
    public required ValueList<LostThing> Lost { get; init; }

    /// <summary>Feeds and lines that are harmed: in-ear feeds, mains, other feeds by priority, lines by priority; then in document order.</summary>
    public required ValueList<LostSubject> Subjects { get; init; }

    /// <summary>Groups that fall silent altogether, such as <c>set 'main'</c> or <c>all in-ear feeds</c>.</summary>
    public ValueList<string> Silences { get; init; }

    /// <summary>Outputs that carried a source and no longer do, whether a feed asked for it or not.</summary>
    public ValueList<PointRange> Outputs { get; init; }

    /// <summary>Channels and other internal sinks that carried a source and no longer do.</summary>
    public ValueList<PointRange> Channels { get; init; }

    /// <summary>Streams that go on over other links.</summary>
    public ValueList<string> Rerouted { get; init; }

    /// <summary>How many feeds go on arriving everywhere.</summary>
    public required int FeedsKept { get; init; }

    /// <summary>How many lines go on arriving everywhere.</summary>
    public required int LinesKept { get; init; }

    /// <summary>What else a person should know, such as a clock that is lost.</summary>
    public ValueList<string> Remarks { get; init; }

    /// <summary>What can be done; null when no plan was asked for or nothing is harmed.</summary>
    public FallbackPlan? Plan { get; init; }

    /// <summary>
    /// True when one thing alone silences a feed that must not fall: critical, of high priority, a main or an in-ear feed, without a backup that goes on.
    /// </summary>
    public bool IsSinglePoint => Lost.Count == 1 && Subjects.Any(subject => subject.Fate == LossFate.Lost && subject.IsProtected);
}
