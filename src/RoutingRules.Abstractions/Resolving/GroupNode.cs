using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>A port group at a sample rate: how many points it has and where they start.</summary>
public sealed class GroupNode
{
    internal GroupNode(PortGroup model, int index, int offset, int count)
    {
        Model = model;
        Index = index;
        Offset = offset;
        Count = count;
        BlockSize = model.BlockSize ?? 1;
    }

    /// <summary>The group as its profile writes it.</summary>
    public PortGroup Model { get; }

    /// <summary>The id.</summary>
    public Id<PortGroup> Id => Model.Id;

    /// <summary>What the points are.</summary>
    public PortKind Kind => Model.Kind;

    /// <summary>Position in the profile, from 0.</summary>
    public int Index { get; }

    /// <summary>Position of the first point among all points of the device, from 0.</summary>
    public int Offset { get; }

    /// <summary>How many points.</summary>
    public int Count { get; }

    /// <summary>How many slots travel together, from 1.</summary>
    public int BlockSize { get; }

    /// <summary>How many whole blocks; slots beyond the last whole block are unusable.</summary>
    public int BlockCount => Count / BlockSize;

    /// <summary>True when the slots live on a jack of a digital multicore.</summary>
    public bool IsCarrier => Model.Carrier is not null;

    /// <summary>True when an unconnected point is a real source: a bus, an input without a cable, the output of a selector.</summary>
    public bool IsOrigin { get; internal set; }

    /// <summary>True for outputs at line level; an output group that states no level counts as line.</summary>
    public bool IsLineOutput => Kind == PortKind.Output && (Model.Level is null || Model.Level == SignalLevel.Line);

    /// <summary>True when odd and even neighbours are pairs in hardware: two channels on a connector, AES3, or stated so.</summary>
    public bool IsPaired => Model.Paired || Model.ChannelsPerConnector == 2 || Model.Level == SignalLevel.Aes3;
}
