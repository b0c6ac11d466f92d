using KitWorks.Geometry;
using KitWorks.Statics.Loads;
using static KitWorks.Statics.Tests.Models;

namespace KitWorks.Statics.Tests.Loads;

public class PanelLoadTests
{
    static readonly Frame Hemisphere = Frames.Dome(4, "1/2");
    static readonly TrussModel Model = TrussModel.Of(Hemisphere, BaseSupport.Pinned).Value;

    static Point3 Sum(LoadCase load) => load.Loads.Aggregate(default(Point3), (sum, l) => sum + new Point3(l.XN, l.YN, l.ZN));

    [Fact]
    public void DeadLoad_OfADome_IsTheMassOfItsParts()
    {
        var load = new DeadLoad { HubKg = 0.25, CoverKgPerM2 = 0.3 }.On(Model, Pvc).Value;
        var kg = 0.476 * Hemisphere.Struts.Sum(s => s.SpacingMm) / 1000 + 0.25 * Hemisphere.Nodes.Length + 0.3 * Hemisphere.Dimensions.CoverAreaM2;
        Near(-kg * 9.80665, Sum(load).Z);
        Assert.Equal(LoadDuration.Lasting, load.Duration);
    }

    [Fact]
    public void Balanced_WhenEverySlopeHoldsItsSnow_WeighsThePlan()
    {
        var load = new SnowLoad { GroundPa = 1000, FullSlopeDeg = 90, BareSlopeDeg = 90 }.Balanced(Model).Value;
        Near(-0.7 * 1.2 * 1000 * Hemisphere.Dimensions.FloorAreaM2, Sum(load).Z);
        Near(0, Sum(load).X, 1e-6);
    }

    [Fact]
    public void Balanced_WhenSlopesShedSnow_WeighsLess()
    {
        var load = Sum(new SnowLoad { GroundPa = 1000 }.Balanced(Model).Value).Z;
        // On a hemisphere the slope is asin(r/R): full within sin 45° of the radius (half of the plan), none beyond sin 70° (0.883 of it).
        Assert.InRange(-load / (840 * Hemisphere.Dimensions.FloorAreaM2), 0.5, 0.883);
    }

    [Fact]
    public void OneSided_OneWayAndTheOther_AddUpToTheBalancedLoad()
    {
        var snow = new SnowLoad { GroundPa = 1000, LeeShare = 1.4, WindwardShare = 0.1 };
        var (one, other) = (snow.OneSided(Model, 0).Value, snow.OneSided(Model, 180).Value);
        var balanced = Sum(snow.Balanced(Model).Value);
        Near(1.5 * balanced.Z, Sum(one).Z + Sum(other).Z);
        Assert.True(one.Loads.Where(l => Model.Nodes[l.Node].X > 1000).Sum(l => l.ZN) < other.Loads.Where(l => Model.Nodes[l.Node].X > 1000).Sum(l => l.ZN));
    }

    [Fact]
    public void Wind_WhenOnlyInsidePressureActs_LiftsByThePlan()
    {
        var wind = new WindLoad { SpeedMPerS = 40, WindwardCp = 0, CrownCp = 0, LeeCp = 0 };
        Near(0.613 * 0.85 * 1600, wind.VelocityPressurePa);
        Near(wind.VelocityPressurePa * 0.18 * Hemisphere.Dimensions.FloorAreaM2, Sum(wind.On(Model, 0, inflated: true).Value).Z);
        Near(-wind.VelocityPressurePa * 0.18 * Hemisphere.Dimensions.FloorAreaM2, Sum(wind.On(Model, 0, inflated: false).Value).Z);
    }

    [Fact]
    public void Wind_OnADome_PushesDownwindAndLifts()
    {
        var force = Sum(new WindLoad { SpeedMPerS = 40 }.On(Model, 0, inflated: true).Value);
        // The dome is its own mirror image in the plane y = 0.
        Near(0, force.Y, 1e-6);
        Assert.True(force.X > 0 && force.Z > force.X);
    }

    [Fact]
    public void Loads_WhenAHubIsTakenOut_GoToItsNeighbours()
    {
        var gone = Hemisphere.Struts.Where(s => s.From == 8 || s.To == 8).Select(s => s.Id);
        var open = TrussModel.Of(Hemisphere, BaseSupport.Pinned, gone).Value;
        var snow = new SnowLoad { GroundPa = 500 };
        Near(Sum(snow.Balanced(Model).Value).Z, Sum(snow.Balanced(open).Value).Z);
        Assert.DoesNotContain(snow.Balanced(open).Value.Loads, l => l.Node == 8);
    }

    [Fact]
    public void Loads_WhenAFactorIsOutOfRange_NameIt()
    {
        Assert.Equal("snow/groundPa", new SnowLoad { GroundPa = double.NaN }.Balanced(Model).Refusal!.Errors.Single().Field);
        Assert.Equal("wind/speedMPerS", new WindLoad { SpeedMPerS = -1 }.On(Model, 0, true).Refusal!.Errors.Single().Field);
        Assert.Equal("wind/towardsDeg", new WindLoad { SpeedMPerS = 1 }.On(Model, double.PositiveInfinity, true).Refusal!.Errors.Single().Field);
        Assert.Equal("dead/hubKg", new DeadLoad { HubKg = -1 }.On(Model, Pvc).Refusal!.Errors.Single().Field);
        Assert.Equal("section/massKgPerM", new DeadLoad().On(Model, Pvc with { MassKgPerM = null }).Refusal!.Errors.Single().Field);
        Assert.Equal("personN", new LoadSet { PersonN = -5 }.On(Model, Pvc).Refusal!.Errors.Single().Field);
    }
}
