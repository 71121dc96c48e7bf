namespace RoutingRules.Reports.Riders;

/// <summary>One mix that a band asks for.</summary>
/// <param name="Row">The line of the list, from 1.</param>
/// <param name="Who">The musician.</param>
/// <param name="System">Wedge or ears, in the band's words.</param>
/// <param name="Position">Where on stage.</param>
/// <param name="Remarks">The rest.</param>
internal sealed record RiderMix(int Row, string Who, string System, string Position, string Remarks);
