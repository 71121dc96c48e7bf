namespace RoutingRules.Rules;

/// <summary>The family of a rule: the digit after <c>RR</c> in its id.</summary>
public enum RuleFamily
{
    /// <summary>RR1: the document itself.</summary>
    Document = 1,

    /// <summary>RR2: points and routes.</summary>
    Points = 2,

    /// <summary>RR3: feeds.</summary>
    Feeds = 3,

    /// <summary>RR4: streams and blocks.</summary>
    Streams = 4,

    /// <summary>RR5: network and clock.</summary>
    Network = 5,

    /// <summary>RR6: lines and electrical.</summary>
    Lines = 6,

    /// <summary>RR7: labels.</summary>
    Labels = 7,

    /// <summary>RR8: resilience.</summary>
    Resilience = 8,

    /// <summary>RR9: hearing and safety.</summary>
    Hearing = 9,
}
