namespace RoutingRules.Planning.Losses;

/// <summary>What a loss does to a feed or a line.</summary>
public enum LossFate
{
    /// <summary>It arrives nowhere any more.</summary>
    Lost,

    /// <summary>It arrives nowhere any more, but a feed that backs it up does.</summary>
    BackedUp,

    /// <summary>Some of its places are lost, others remain.</summary>
    Partly,
}
