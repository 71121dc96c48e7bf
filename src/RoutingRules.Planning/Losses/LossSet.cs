namespace RoutingRules.Planning.Losses;

/// <summary>What is out of order at once, by position in the rig.</summary>
internal sealed class LossSet(int devices, int links, int cables)
{
    public bool[] Devices { get; } = new bool[devices];

    /// <summary>Links that fail by themselves, or with a device at one end.</summary>
    public bool[] Links { get; } = new bool[links];

    public bool[] Cables { get; } = new bool[cables];

    public List<int> Points { get; } = [];
}
