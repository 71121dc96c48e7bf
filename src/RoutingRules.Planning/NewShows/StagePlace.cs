namespace RoutingRules.Planning.NewShows;

/// <summary>Where a stage box of a starting show stands.</summary>
public enum StagePlace
{
    /// <summary>At the centre.</summary>
    Stage,

    /// <summary>At the performers' right, the audience's left.</summary>
    StageRight,

    /// <summary>At the performers' left, the audience's right.</summary>
    StageLeft,

    /// <summary>At the drum riser.</summary>
    Riser,
}
