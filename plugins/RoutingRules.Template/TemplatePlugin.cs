using RoutingRules.Plugins;

namespace RoutingRules.Template;

/// <summary>Brings one rule and one profile. Copy the folder, rename what is in it, and put your own in their place.</summary>
public sealed class TemplatePlugin : RoutingPlugin
{
    /// <inheritdoc/>
    public override PluginInfo Info =>
        new()
        {
            Id = "template",
            Version = "0.1.0",
            Title = "A plugin to start from",
        };

    /// <inheritdoc/>
    public override void Register(PluginRegistry registry)
    {
        ArgumentNullException.ThrowIfNull(registry);
        registry.AddRule(new DeviceWithoutZone()).AddProfiles(new TemplateProfiles());
    }
}
