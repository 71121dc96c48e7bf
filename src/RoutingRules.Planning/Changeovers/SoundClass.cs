namespace RoutingRules.Planning.Changeovers;

/// <summary>Outputs and channels by who is hurt first when something goes wrong.</summary>
internal enum SoundClass
{
    Ears,
    House,
    Monitors,
    Others,
    Channels,
}
