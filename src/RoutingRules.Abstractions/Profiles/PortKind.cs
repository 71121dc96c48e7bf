namespace RoutingRules.Profiles;

/// <summary>What the points of a port group are.</summary>
public enum PortKind
{
    /// <summary>Internal sources: buses, talkback microphones, players' tracks.</summary>
    Source,

    /// <summary>Internal sinks: channels, recorder tracks, inserts' returns.</summary>
    Sink,

    /// <summary>Connectors where signal enters.</summary>
    Input,

    /// <summary>Connectors where signal leaves.</summary>
    Output,

    /// <summary>Slots toward the network.</summary>
    Transmit,

    /// <summary>Slots from the network.</summary>
    Receive,

    /// <summary>Network jacks.</summary>
    Network,
}
