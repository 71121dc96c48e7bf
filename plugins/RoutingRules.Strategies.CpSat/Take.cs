using Google.OrTools.Sat;

namespace RoutingRules.Strategies.CpSat;

/// <summary>That a receive block, or one of several equal ones, takes a run of slots.</summary>
/// <param name="Variable">Whether it does.</param>
/// <param name="Block">The transmit block, by position.</param>
/// <param name="Start">The first slot of the run.</param>
internal readonly record struct Take(BoolVar Variable, int Block, int Start);
