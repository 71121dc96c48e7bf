using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>A port group of a device with its count at the rig's sample rate.</summary>
internal sealed record GroupView(Device Device, DeviceProfile Profile, PortGroup Group, int Count)
{
    public int BlockSize => Group.BlockSize ?? 1;

    public int BlockCount => Count / BlockSize;

    public PointRange Range(int first, int width) => new(Device.Id, Group.Id, first, first + width - 1);

    /// <summary>The slots of a block, counted from 0.</summary>
    public PointRange Block(int block) => Range((block * BlockSize) + 1, BlockSize);

    /// <summary>A run somewhere in the group.</summary>
    public PointRange Somewhere(Dice dice, int width) => Range(dice.Roll(1, Count - width + 1), width);
}
