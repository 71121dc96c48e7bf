namespace RoutingRules.Reports.Riders;

/// <summary>One line that a band asks for.</summary>
/// <param name="Row">The line of the list, from 1.</param>
/// <param name="First">The band's first number for it.</param>
/// <param name="Width">1, or 2 for left and right.</param>
/// <param name="What">What it is, such as <c>Kick in</c>.</param>
/// <param name="Equipment">The microphone or direct box; empty when the band leaves it open.</param>
/// <param name="Phantom">What stands in the column of phantom power.</param>
/// <param name="Stand">The stand.</param>
/// <param name="Position">Where on stage, or the heading above.</param>
/// <param name="Remarks">The rest.</param>
internal sealed record RiderInput(int Row, int First, int Width, string What, string Equipment, string Phantom, string Stand, string Position, string Remarks);
