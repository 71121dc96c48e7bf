namespace RoutingRules.Model;

/// <summary>Marks ids of power supplies, such as <c>sl-distro</c>; supplies are known by name only.</summary>
public abstract class PowerSource
{
    private PowerSource() { }
}
