"""Arm, pushrod and horn."""

import math

from words import SIDE_WORDS, Mistake, degrees, known_keys, millimetres, plain


class FourBar:
    """Arm, pushrod and horn in the plane of x aft and y towards the horn's side.

    The shaft is at the origin and the hinge at (along, across). Angles turn
    from x to y. The horn's angle is found by Newton's iteration on

        F(horn) = |horn tip − arm tip|² − pushrod² = 0

    from a neighbouring solution, step by step from the one at neutral. The two
    ways of assembling the linkage have opposite signs of dF/dhorn, and meet
    where that is zero: there it locks.
    """

    STEP = 0.25  # degrees of arm between remembered solutions
    CLOSE = 1e-15  # radians: the iteration has settled
    ROUNDS = 60

    def __init__(self, arm, horn, along, across, arm_deg, horn_deg, pushrod=None):
        self.arm, self.horn, self.along, self.across = arm, horn, along, across
        self.arm_deg, self.horn_deg = arm_deg, horn_deg
        rest = math.radians(horn_deg)
        if pushrod is None:
            ax, ay = self.arm_tip(arm_deg)
            hx, hy = self.horn_tip(rest)
            self.rod = math.hypot(hx - ax, hy - ay)
        else:
            self.rod = pushrod
            rest = self.nearest(arm_deg, rest)
        self.sense = math.copysign(1, self.slope(arm_deg, rest))
        self.known = {0: rest}  # horn's angle at each whole step of the arm from neutral

    def arm_tip(self, arm_deg):
        t = math.radians(arm_deg)
        return self.arm * math.cos(t), self.arm * math.sin(t)

    def horn_tip(self, t):
        return self.along + self.horn * math.cos(t), self.across + self.horn * math.sin(t)

    def gap(self, arm_deg, t):
        ax, ay = self.arm_tip(arm_deg)
        hx, hy = self.horn_tip(t)
        d = math.hypot(hx - ax, hy - ay)
        return (d - self.rod) * (d + self.rod)

    def slope(self, arm_deg, t):
        ax, ay = self.arm_tip(arm_deg)
        hx, hy = self.horn_tip(t)
        return 2 * self.horn * ((hy - ay) * math.cos(t) - (hx - ax) * math.sin(t))

    def nearest(self, arm_deg, t):
        """The solution nearest to t: look both ways for a change of sign, then halve."""
        look, found = math.radians(0.05), []
        for way in (+1, -1):
            near, count = t, 0
            f_near = self.gap(arm_deg, near)
            while count < 7200:
                far = near + way * look
                f_far = self.gap(arm_deg, far)
                if f_near == 0 or (f_near > 0) != (f_far > 0):
                    break
                near, f_near, count = far, f_far, count + 1
            else:
                raise Mistake("the pushrod reaches nowhere at neutral")
            low, high = near, far
            while True:
                middle = (low + high) / 2
                if middle in (low, high):
                    break
                if (self.gap(arm_deg, middle) > 0) == (f_near > 0):
                    low = middle
                else:
                    high = middle
            found.append(low if f_near else near)
        return min(found, key=lambda each: abs(each - t))

    def settle(self, arm_deg, start):
        """Newton from start; None if it leaves start's neighbourhood or the branch."""
        t = start
        for _ in range(self.ROUNDS):
            slope = self.slope(arm_deg, t)
            if slope * self.sense <= 0:
                return None
            change = -self.gap(arm_deg, t) / slope
            t += change
            if abs(t - start) > 0.2:
                return None
            if abs(change) <= self.CLOSE * max(1, abs(t)):
                return t
        # Rounding may keep the last digit moving; the loop must be closed all the same.
        return t if abs(change) < 1e-13 else None

    def follow(self, from_arm, t, to_arm):
        """The solution at to_arm that is continuous with t at from_arm."""
        direct = self.settle(to_arm, t)
        if direct is not None:
            return direct
        if abs(to_arm - from_arm) < 1e-7:
            raise Mistake(f"the linkage locks {to_arm - self.arm_deg:+.4f}° of arm from neutral")
        middle = (from_arm + to_arm) / 2
        return self.follow(middle, self.follow(from_arm, t, middle), to_arm)

    def turn(self, swing):
        """Horn's turn from where the surface is neutral, degrees from x to y, for
        an arm that has turned by swing degrees from x to y."""
        steps = int(swing / self.STEP)
        if steps not in self.known:
            way = 1 if steps > 0 else -1
            last = 0
            while last != steps:
                following = last + way
                if following not in self.known:
                    self.known[following] = self.follow(
                        self.arm_deg + last * self.STEP, self.known[last],
                        self.arm_deg + following * self.STEP)
                last = following
        t = self.follow(self.arm_deg + steps * self.STEP, self.known[steps], self.arm_deg + swing)
        return math.degrees(t) - self.horn_deg


class Linkage:
    """A four-bar as the file says it, with the side that its horn stands on."""

    def __init__(self, where, body, steers):
        known_keys(where, body, "arm_mm", "horn_mm", "pivots_mm", "offset_mm", "horn", "arm",
                   "arm_deg", "horn_deg", "pushrod_mm")
        plane, side = SIDE_WORDS[plain(body["horn"])]
        arm_plane, arm_side = SIDE_WORDS[plain(body.get("arm", body["horn"]))]
        if plane != arm_plane:
            raise Mistake(f"{where}: arm and horn lie in different planes")
        # y points to the horn's side, so what is above or to starboard is minus
        # where the horn is below or to port.
        across = side * millimetres(body.get("offset_mm", "0"))
        arm_deg = degrees(body.get("arm_deg", "90"))
        # Aft is towards x: from the horn's side a tip goes aft as its angle falls,
        # from the other side as it grows.
        self.aft = -1.0
        if arm_side != side:
            arm_deg, self.aft = -arm_deg, 1.0
        rod = millimetres(body["pushrod_mm"]) if "pushrod_mm" in body else None
        self.bars = FourBar(millimetres(body["arm_mm"]), millimetres(body["horn_mm"]),
                            millimetres(body["pivots_mm"]), across, arm_deg,
                            degrees(body.get("horn_deg", "90")), rod)
        # The trailing edge lies at +x of the hinge and turns with the horn towards
        # y. That is up for a horn above, right for one to starboard: minus. Below
        # and port: plus. A nose wheel's front lies at −x and goes the other way.
        self.sense = -side
        if steers == "nose":
            self.sense = side

    def angle(self, aft_swing):
        return self.sense * self.bars.turn(self.aft * aft_swing)
