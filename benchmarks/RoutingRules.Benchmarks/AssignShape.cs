namespace RoutingRules.Benchmarks;

/// <summary>What an instance for assignment looks like.</summary>
public enum AssignShape
{
    /// <summary>One large console and many small boxes of every kind of routing.</summary>
    Boxes,

    /// <summary>A chain of boxes whose routing is fixed.</summary>
    Chain,

    /// <summary>Two consoles that share boxes.</summary>
    TwoConsoles,

    /// <summary>Many pairs, few outputs left, spares asked for.</summary>
    Tight,

    /// <summary>A festival: sets, groups, preferred numbers, priorities, and lines to the console.</summary>
    Festival,
}
