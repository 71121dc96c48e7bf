using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>How full a device is.</summary>
public sealed record DeviceUse
{
    /// <summary>The device.</summary>
    public required Id<Device> Device { get; init; }

    /// <summary>Outputs at which a feed is placed.</summary>
    public required int OutputsUsed { get; init; }

    /// <summary>Outputs that are neither dead, reserved nor excluded.</summary>
    public required int OutputsUsable { get; init; }

    /// <summary>Inputs at which a line is placed.</summary>
    public required int InputsUsed { get; init; }

    /// <summary>Inputs that are neither dead, reserved nor excluded.</summary>
    public required int InputsUsable { get; init; }

    /// <summary>Transmit blocks that a stream with a receiver sends.</summary>
    public required int TransmitBlocksUsed { get; init; }

    /// <summary>Transmit blocks that can be sent: those there are, or the profile's limit when that is lower.</summary>
    public required int TransmitBlockLimit { get; init; }

    /// <summary>Receive blocks that a stream feeds.</summary>
    public required int ReceiveBlocksUsed { get; init; }

    /// <summary>Receive blocks there are.</summary>
    public required int ReceiveBlockLimit { get; init; }

    /// <summary>Streams received.</summary>
    public required int StreamsReceived { get; init; }

    /// <summary>Streams that can be received by the profile; null when it states no limit.</summary>
    public int? StreamsReceivedLimit { get; init; }
}
