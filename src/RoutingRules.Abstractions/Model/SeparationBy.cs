namespace RoutingRules.Model;

/// <summary>What two separated feeds must not share.</summary>
public enum SeparationBy
{
    /// <summary>A device.</summary>
    Device,

    /// <summary>A power supply.</summary>
    Power,

    /// <summary>A network link.</summary>
    Link,
}
