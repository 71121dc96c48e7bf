namespace RoutingRules.Engine.Plugins;

/// <summary>Plugins cannot be loaded from a file; the message names the file and says what to do.</summary>
public sealed class PluginLoadException : Exception
{
    /// <summary>Without a message.</summary>
    public PluginLoadException() { }

    /// <summary>With a message.</summary>
    public PluginLoadException(string message)
        : base(message) { }

    /// <summary>With a message and what led to it.</summary>
    public PluginLoadException(string message, Exception innerException)
        : base(message, innerException) { }
}
