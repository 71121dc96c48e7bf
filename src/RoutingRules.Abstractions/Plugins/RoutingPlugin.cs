namespace RoutingRules.Plugins;

/// <summary>A plugin: it adds profiles, rules, fixes and strategies to an engine that is being built.</summary>
/// <remarks>A plugin runs with all the rights of the program that loads it.</remarks>
public abstract class RoutingPlugin
{
    /// <summary>What the plugin says about itself.</summary>
    public abstract PluginInfo Info { get; }

    /// <summary>Adds what the plugin brings. Called once for each engine.</summary>
    /// <param name="registry">Where to add it.</param>
    public abstract void Register(PluginRegistry registry);
}
