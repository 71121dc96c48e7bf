namespace RoutingRules.Reports.Lists;

/// <summary>A list of what somebody wants to arrive where.</summary>
public enum IntentList
{
    /// <summary>The feeds of a show.</summary>
    Feeds,

    /// <summary>The lines of a show.</summary>
    Lines,
}
