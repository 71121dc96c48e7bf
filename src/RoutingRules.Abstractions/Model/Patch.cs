namespace RoutingRules.Model;

/// <summary>Routes and streams, with the settings of inputs and the labels that go with them.</summary>
public sealed record Patch
{
    /// <summary>Network streams.</summary>
    public ValueList<AudioStream> Streams { get; init; }

    /// <summary>Routes inside devices.</summary>
    public ValueList<Route> Routes { get; init; }

    /// <summary>Phantom and gain of inputs.</summary>
    public ValueList<InputSettings> Inputs { get; init; }

    /// <summary>Texts shown at points.</summary>
    public ValueList<PointLabel> Labels { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
