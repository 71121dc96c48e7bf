namespace RoutingRules.Model;

/// <summary>Whether a line wants phantom power (IEC 61938).</summary>
public enum PhantomNeed
{
    /// <summary>It does not matter.</summary>
    Either,

    /// <summary>It needs phantom power.</summary>
    Required,

    /// <summary>It must not get phantom power.</summary>
    Forbidden,
}
